"""Plants one trespass of each kind in a small tree and reads what tools/floors says about it."""
import pathlib
import subprocess
import sys
import tempfile
import unittest

FLOORS = pathlib.Path(__file__).parents[2] / "tools" / "floors"


def findings(files):
    with tempfile.TemporaryDirectory() as root:
        for place, text in files.items():
            path = pathlib.Path(root) / place
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text)
        answer = subprocess.run([sys.executable, FLOORS, "--root", root], capture_output=True, text=True)
        return answer.returncode, answer.stdout.strip()


class Floors(unittest.TestCase):
    def refused(self, files, sentence):
        code, said = findings(files)
        self.assertEqual((code, said), (1, sentence))

    def allowed(self, files):
        code, said = findings(files)
        self.assertEqual(code, 0, said)

    def test_an_include_of_a_lower_floor_or_the_own_room_is_fine(self):
        self.allowed({"core/drying/bake.cpp": '#include "core/drying/detail/x.h"\n#include "core/materials/wax.h"\n',
                      "core/quantity/mass.h": '#include "core/base/text.h"\n'})

    def test_a_neighbour(self):
        self.refused({"core/drying/bake.cpp": '#pragma once\n\n#include "core/coating/film.h"\n'},
                     "core/drying/bake.cpp line 3 includes core/coating/film.h, a neighbour on floor 3: "
                     "move the shared piece down, or let the caller pass the value.")

    def test_a_higher_floor(self):
        self.refused({"core/base/text.h": '#include "core/quantity/mass.h"\n'},
                     "core/base/text.h line 1 includes core/quantity/mass.h, up on floor 0.5: "
                     "declare the interface here and let the room above fulfil it, or pass the value.")

    def test_private_machinery_of_another_room(self):
        self.refused({"core/drying/bake.cpp": '#include "core/materials/detail/row.h"\n'},
                     "core/drying/bake.cpp line 1 includes core/materials/detail/row.h, "
                     "private machinery of core/materials: use one of its doors.")

    def test_a_room_without_a_floor(self):
        self.refused({"core/attic/box.h": ""},
                     "core/attic/box.h line 1 lies in core/attic, which has no floor: "
                     "give it one in tools/floors and docs/architecture.md.")

    def test_a_library_away_from_home(self):
        self.refused({"workbench/plan.cpp": "#include <toml++/toml.h>\n"},
                     "workbench/plan.cpp line 1 includes <toml++/toml.h>, whose home is adapters/files: "
                     "go through a door of that room.")

    def test_an_exception_in_the_core(self):
        self.refused({"core/line/sort.cpp": "void f() {\n  throw 1;\n}\n"},
                     "core/line/sort.cpp line 2 uses `throw`, which core/line must not: "
                     "return a Result or a Problem, or use DAMPWARD_PROMISE for our own mistakes.")

    def test_words_in_comments_and_texts_are_no_trespass(self):
        self.allowed({"core/line/sort.cpp": '// a throw of the switch\n/* now()\n getenv */ auto s = "throw it away";\n'})

    def test_adapters_may_read_files_and_throw(self):
        self.allowed({"adapters/files/disk.cpp": "#include <fstream>\nvoid f() { throw 1; }\n"})

    def test_a_link_to_a_neighbour(self):
        self.refused({"core/drying/CMakeLists.txt": "dampward_room(drying LINKS materials coating)\n",
                      "core/materials/CMakeLists.txt": "dampward_room(materials)\n"},
                     "core/drying/CMakeLists.txt line 1 links coating, a neighbour on floor 3: "
                     "move the shared piece down, or let the caller pass the value.")

    def test_a_link_to_a_room_that_is_not_there(self):
        self.refused({"core/drying/CMakeLists.txt": "dampward_room(drying LINKS materials)\n"},
                     "core/drying/CMakeLists.txt line 1 links materials, but core/materials/CMakeLists.txt does not exist: "
                     "add the room or drop the link.")

    def test_a_room_that_the_architecture_page_forgot(self):
        self.refused({"core/line/sort.h": "", "core/line/README.md": "",
                      "docs/architecture.md": "# Floors\n\n| 5 | `core/referee` |\n"},
                     "docs/architecture.md line 1 does not have core/line in its table of floors: add it.\n"
                     "docs/architecture.md line 3 names core/referee, which does not exist: "
                     "drop it until its first code does.")


unittest.main()
