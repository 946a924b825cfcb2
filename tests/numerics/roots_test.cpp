#include "core/numerics/roots.h"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/numerics/integrate.h"

using namespace dampward::numerics;

TEST_CASE("a root is found to the tolerance asked, from either side") {
  const auto cosine = [](double x) { return std::cos(x); };
  CHECK(root_between(cosine, 0, 3, 1e-12) == doctest::Approx(std::acos(0)).epsilon(1e-12));
  CHECK(root_between(cosine, 3, 0, 1e-12) == doctest::Approx(std::acos(0)).epsilon(1e-12));
  CHECK(root_between([](double x) { return x * x * x - 2; }, 0, 2, 0) ==
        doctest::Approx(std::cbrt(2.0)).epsilon(1e-15));
}

TEST_CASE("a root at the edge of the stretch is found") {
  CHECK(root_between([](double x) { return x; }, 0, 1, 1e-9) == 0);
  CHECK(root_between([](double x) { return x - 1; }, 0, 1, 1e-9) == 1);
}

TEST_CASE("a function that is flat nearly everywhere still gives up its root in few steps") {
  int calls = 0;
  const double x = root_between([&](double at) { return ++calls, std::pow(at - 0.3, 9); }, -1, 4, 1e-9);
  CHECK(std::abs(x - 0.3) < 1e-9);
  CHECK(calls < 120);
}

TEST_CASE("every rising line is crossed where it should be") {
  rc::check([] {
    const double at = *rc::gen::inRange(-1000, 1000) / 7.0, slope = *rc::gen::inRange(1, 1000) / 3.0;
    RC_ASSERT(std::abs(root_between([=](double x) { return slope * (x - at); }, -200, 200, 1e-10) - at) <
              1e-9);
  });
}

TEST_CASE("three Gauss points integrate a polynomial of degree five exactly") {
  CHECK(integral([](double x) { return 6 * std::pow(x, 5) - x * x; }, -1, 2) == doctest::Approx(60));
  CHECK(integral([](double x) { return std::exp(x); }, 0, 0.5) ==
        doctest::Approx(std::exp(0.5) - 1).epsilon(1e-7));
}
