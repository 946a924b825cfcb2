#include "tests/cli/page.h"

#include <doctest/doctest.h>

#include "tests/cli/demo_shop.h"
#include "tests/cli/page_run.h"

// The reader of pages itself: were it to look away, every page would seem true.

TEST_CASE("what a page shows must be what is seen, to the letter") {
  CHECK(fits_shown("one\ntwo\n", "one\ntwo\n"));
  CHECK(fits_shown("one  \ntwo\n\n", "one\ntwo\n"));
  CHECK(fits_shown("5\u00a0°C\n", "5 °C\n"));
  CHECK_FALSE(fits_shown("one\ntwo\n", "one\n"));
  CHECK_FALSE(fits_shown("one\n", "one\ntwo\n"));
  CHECK_FALSE(fits_shown("one\ntwo\n", "one\n two\n"));
}

TEST_CASE("three dots on a line of their own stand for any lines or none") {
  CHECK(fits_shown("one\ntwo\nthree\n", "one\n...\nthree\n"));
  CHECK(fits_shown("one\nthree\n", "one\n...\nthree\n"));
  CHECK(fits_shown("one\ntwo\nthree\n", "...\nthree\n"));
  CHECK(fits_shown("a\nb\na\nc\n", "...\na\nc\n"));
  CHECK_FALSE(fits_shown("one\ntwo\n", "...\nthree\n"));
  CHECK_FALSE(fits_shown("one\ntwo\n", "one...\n"));
}

TEST_CASE("a page is read into what is typed, seen and written") {
  const auto steps = steps_of_page(
      "Words.\n\n```sh\nls\n```\n\n```text\nnothing\n```\n\n```sh exit 3\nfalse\n```\n\nNow it differs.\n\n"
      "```text\nonly to be read\n```\n\nWrite `a/b.toml`:\n\n```toml\nx = 1\n```\n\n"
      "And at the end\nof `a/b.toml`:\n```toml\ny = 2\n```\nChange `a/b.toml`:\n```diff\n-x = 1\n+x = "
      "3\n```\n");
  REQUIRE(steps.size() == 5);
  CHECK(steps[0].what == PageStep::What::run);
  CHECK(steps[0].text == "ls\n");
  CHECK(steps[0].has_shown);
  CHECK(steps[0].shown == "nothing\n");
  CHECK(steps[1].exit_code == 3);
  CHECK_FALSE(steps[1].has_shown);
  CHECK(steps[2].what == PageStep::What::write);
  CHECK(steps[2].file == "a/b.toml");
  CHECK(steps[3].what == PageStep::What::append);
  CHECK(steps[4].what == PageStep::What::change);

  const ScratchFolder scratch;
  follow({steps[2], steps[3], steps[4]}, scratch.path().string());
  CHECK(whole_text(scratch.path() / "a" / "b.toml") == "x = 3\ny = 2\n");
}

TEST_CASE("commands of a page run in its folder, and one that fails ends them") {
  const ScratchFolder scratch;
  const Shown run =
      run_in_shell("echo first > note\ncat note\ncat nowhere 2>&1 | wc -l\n(exit 3)\necho never\n",
                   scratch.path().string());
  CHECK(run.exit_code == 3);
  CHECK(run.text == "first\n1\n");
  CHECK(run_in_shell("dampward --version", scratch.path().string()).exit_code == 0);
}
