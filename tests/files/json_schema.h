#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

// Where a document departs from a JSON Schema, draft 7 (draft-handrews-json-schema-validation-01); empty: nowhere. It knows
// the keywords that the schemas of this project use and calls any other a misfit, so that none goes unheeded.
std::vector<std::string> misfits(const nlohmann::json& schema, const nlohmann::json& document);
