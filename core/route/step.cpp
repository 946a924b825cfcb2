#include "core/route/step.h"

#include "core/base/format.h"

namespace dampward::route {

std::string code_word(StepCode code) {
  switch (code) {
    case StepCode::make_safe:
      return "make_safe";
    case StepCode::test:
      return "test";
    case StepCode::repair:
      return "repair";
    case StepCode::strip:
      return "strip";
    case StepCode::take_out:
      return "take_out";
    case StepCode::clean:
      return "clean";
    case StepCode::salt_proof:
      return "salt_proof";
    case StepCode::solvent_free:
      return "solvent_free";
    case StepCode::cover:
      return "cover";
    case StepCode::loosen:
      return "loosen";
    case StepCode::tighten:
      return "tighten";
    case StepCode::load:
      return "load";
    case StepCode::bake:
      return "bake";
    case StepCode::unload:
      return "unload";
    case StepCode::cabinet_in:
      return "cabinet_in";
    case StepCode::cabinet:
      return "cabinet";
    case StepCode::cabinet_out:
      return "cabinet_out";
    case StepCode::tape:
      return "tape";
    case StepCode::coat:
      return "coat";
    case StepCode::flash:
      return "flash";
    case StepCode::unmask:
      return "unmask";
    case StepCode::touch_up:
      return "touch_up";
    case StepCode::film_dry:
      return "film_dry";
    case StepCode::airing:
      return "airing";
    case StepCode::mark:
      return "mark";
    case StepCode::reassemble:
      return "reassemble";
    case StepCode::retest:
      return "retest";
    case StepCode::recheck:
      return "recheck";
    case StepCode::let_dry:
      return "let_dry";
    case StepCode::strip_off:
      return "strip_off";
    case StepCode::stripped_free:
      return "stripped_free";
  }
  return "";
}

bool is_carried(StepCode code) {
  return code == StepCode::load || code == StepCode::unload || code == StepCode::cabinet_in ||
         code == StepCode::cabinet_out;
}

std::string step_id(int version, StepCode code, int turn) {
  return turn > 0 ? format("r{}.{}{}", version, code_word(code), turn)
                  : format("r{}.{}", version, code_word(code));
}

}  // namespace dampward::route
