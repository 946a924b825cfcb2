#pragma once

#include "adapters/files/out_folder.h"
#include "apps/cli/call.h"
#include "core/base/civil_time.h"
#include "core/base/problem.h"
#include "core/base/result.h"

namespace dampward::cli {

// One verb each: read, call one function of the workbench, put the answer into words or JSON.
Answer start(const Call& call);
Answer proofread(const Call& call);
Answer plan(const Call& call);
Answer note(const Call& call);
Answer exposure(const Call& call);
Answer solve(const Call& call);
Answer verify(const Call& call);
Answer selfcheck(const Call& call);
Answer mix(const Call& call);
Answer air(const Call& call);
Answer leaflet(const Call& call);
Answer bake(const Call& call);
Answer window(const Call& call);
Answer charts(const Call& call);
Answer completion(const Call& call);
Answer man(const Call& call);

// The verb that was asked for.
Answer answer(const Call& call);

// Faults of the input as an answer: told on standard error, and as the one JSON document where that was asked for.
Answer faulty(const Call& call, const Problems& problems);
// The same where --out could not be written: a full disk is nothing the input could mend.
Answer not_written(const Call& call, const files::NotWritten& failure);

// "2026-11-30 09:20" on the shop's clock, or with Z or an offset; the problem names the option.
Result<Instant> time_option(const std::string& option, const std::string& written, const WallClock& clock);

}  // namespace dampward::cli
