// A question bank as plain numbers in JSON: what Python recomputes, what the simulations read.
// {"K":12,"B":2,"critical":[..K booleans],"weights":[..K+B],"rules_out":[..B],"prior":[..2^(K+B)],
//  "items":[{"kind":0,"pieces":[{"mask":3,"columns":5,"rows":[..2^bits(mask) * columns]}]}]}
// weights are those of the index J: 0 for techniques that are not critical.
#pragma once

#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/mastery/evidence.h"

namespace rehale::support {

inline std::string read_text(const std::string& path) {
  std::string text;
  if (std::FILE* file = std::fopen(path.c_str(), "rb")) {
    char part[4096];
    for (std::size_t got = std::fread(part, 1, sizeof part, file); got > 0;
         got = std::fread(part, 1, sizeof part, file)) {
      text.append(part, got);
    }
    std::fclose(file);
  }
  return text;
}

inline nlohmann::json bank_to_json(const mastery::Bank& bank) {
  const mastery::Model& model = bank.model;
  nlohmann::json json{{"K", model.techniques}, {"B", model.misconceptions}, {"prior", model.prior}};
  for (int k = 0; k < model.techniques; ++k) {
    json["critical"].push_back((model.critical & mastery::bit(k)) != 0);
  }
  json["weights"] = std::vector<double>(model.weight.begin(), model.weight.begin() + model.bits());
  json["rules_out"] =
      std::vector<int>(model.rules_out.begin(), model.rules_out.begin() + model.misconceptions);
  json["items"] = nlohmann::json::array();
  for (const mastery::Item& item : bank.items) {
    nlohmann::json pieces = nlohmann::json::array();
    for (const mastery::Piece& piece : item.pieces) {
      pieces.push_back({{"mask", piece.mask}, {"columns", piece.columns}, {"rows", piece.rows}});
    }
    json["items"].push_back({{"kind", item.kind}, {"pieces", pieces}});
  }
  return json;
}

// The JSON must have been written by bank_to_json or make.py: keys are not checked, numbers are.
inline Result<mastery::Bank> bank_from_json(const nlohmann::json& json) {
  std::vector<mastery::TechniqueSpec> techniques(json["K"].get<std::size_t>());
  std::vector<mastery::MisconceptionSpec> misconceptions(json["B"].get<std::size_t>());
  for (std::size_t k = 0; k < techniques.size(); ++k) {
    techniques[k].critical = json["critical"][k].get<bool>();
    if (techniques[k].critical) techniques[k].weight = json["weights"][k].get<double>();
  }
  for (std::size_t b = 0; b < misconceptions.size(); ++b) {
    misconceptions[b].rules_out = json["rules_out"][b].get<int>();
    misconceptions[b].weight =
        json["weights"][techniques.size() + b].get<double>() / mastery::k_misconception_worth;
  }
  Result<mastery::Model> model = mastery::make_model(mastery::People{techniques, misconceptions},
                                                     json["prior"].get<std::vector<double>>());
  if (!model) return tl::unexpected<Error>(model.error());
  mastery::Bank bank{std::move(*model), {}};
  for (const nlohmann::json& entry : json["items"]) {
    mastery::Item item;
    item.kind = entry["kind"].get<int>();
    for (const nlohmann::json& part : entry["pieces"]) {
      Result<mastery::Piece> piece =
          mastery::make_piece(part["mask"].get<mastery::Bits>(), part["columns"].get<int>(),
                              part["rows"].get<std::vector<double>>());
      if (!piece) return tl::unexpected<Error>(piece.error());
      item.pieces.push_back(std::move(*piece));
    }
    bank.items.push_back(std::move(item));
  }
  return bank;
}

inline Result<mastery::Bank> read_bank(const std::string& path) {
  const auto json = nlohmann::json::parse(read_text(path), nullptr, false);
  if (!json.is_object() || !json.contains("prior") || !json.contains("items")) {
    return fail("bank-file", path, "no such file, or not a bank as bank_json.h describes");
  }
  return bank_from_json(json);
}

}  // namespace rehale::support
