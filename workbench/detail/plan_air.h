#pragma once

#include <string>
#include <vector>

#include "core/line/answer.h"
#include "core/line/problem.h"
#include "core/room_air/air_course.h"
#include "workbench/detail/unit_draft.h"
#include "workbench/plan.h"

namespace dampward::workbench {

// All that gets loose in the spray place over one timetable, told twice: recipes at their worst for fire, and for people. The releases
// of both stand in the same order.
struct PlanScenes {
  room_air::Scene fire, people;
  std::vector<std::vector<PersonId>> hands;  // who is at each release
};

PlanScenes scenes_of(const std::vector<UnitDraft>& units, const std::vector<LoadDraft>& loads,
                     const line::Answer& answer, const PaintShop& paint, const Workshop& workshop);

// The air of the timetable: the room's worst, and what each of the crew breathes on their worst day.
struct PlanAir {
  room_air::AirCourse fire;       // course of the scene of that name
  room_air::FlammablePeak peak;   // of the lower flammable limit
  room_air::AirForScene needed;   // air that would be enough at its worst minute
  std::vector<PersonAir> people;  // in the order of the crew
  std::vector<Refusal> refused;   // units whose work would bring the air above what may be
};

PlanAir air_of(const PlanScenes& scenes, const line::Problem& problem, const PaintShop& paint,
               const Workshop& workshop, Instant from, const WallClock& clock);

}  // namespace dampward::workbench
