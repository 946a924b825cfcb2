#pragma once

#include "apps/cli/call.h"
#include "core/base/problem.h"

namespace dampward::cli {

// One verb each: read, call one function of the workbench, put the answer into words or JSON.
Answer start(const Call& call);
Answer proofread(const Call& call);
Answer plan(const Call& call);
Answer exposure(const Call& call);
Answer solve(const Call& call);
Answer verify(const Call& call);
Answer selfcheck(const Call& call);

// The verb that was asked for.
Answer answer(const Call& call);

// Faults of the input as an answer: told on standard error, and as the one JSON document where that was asked for.
Answer faulty(const Call& call, const Problems& problems);

}  // namespace dampward::cli
