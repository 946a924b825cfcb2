#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/base/id.h"

namespace dampward::equipment {

// What somebody at the bench should see at one place of a kind.
enum class PinKind {
  mask,        // covered before lacquer
  damp,        // damp sits here
  weak,        // weak to heat
  brush,       // brush only
  never_coat,  // no lacquer at all
};

struct Pin {
  PinKind kind = PinKind::mask;
  PartId part;
  double across = 0, down = 0;  // shares of the picture's width and height, 0 to 1 from its top left corner
};

// A drawing or photograph of a kind, as its file holds it: SVG, PNG or JPEG.
struct Picture {
  std::string file;                          // as the shop's files name it
  std::shared_ptr<const std::string> bytes;  // none: not read yet
  std::vector<Pin> pins;
};

}  // namespace dampward::equipment
