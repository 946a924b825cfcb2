#pragma once

#include "core/base/problem.h"

namespace dampward::files {

// What a reader has to say about a file beside the values it found there.
struct Proof {
  Problems faults;    // the values cannot be used
  Problems warnings;  // suspicions; the values stand
};

}  // namespace dampward::files
