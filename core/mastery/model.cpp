#include "core/mastery/model.h"

#include <string>
#include <utility>

namespace rehale::mastery {
namespace {

Result<Model> start_model(const People& people) {
  Model model;
  model.techniques = static_cast<int>(people.techniques.size());
  model.misconceptions = static_cast<int>(people.misconceptions.size());
  if (model.techniques < 1 || model.techniques > k_max_techniques ||
      model.misconceptions > k_max_misconceptions || model.bits() < k_min_bits) {
    return fail("mastery-size", "model",
                std::to_string(model.techniques) + " techniques and " +
                    std::to_string(model.misconceptions) +
                    " misconceptions; 1 to 12 and 0 to 4, together 3 or more, would be right");
  }
  for (int k = 0; k < model.techniques; ++k) {
    const TechniqueSpec& spec = people.techniques[static_cast<std::size_t>(k)];
    if (!(spec.weight > 0 && spec.weight <= 1)) {
      return fail("mastery-range", "technique " + std::to_string(k), "weight must lie in (0,1]");
    }
    if (!spec.critical) continue;
    model.critical |= bit(k);
    model.weight[static_cast<std::size_t>(k)] = spec.weight;
  }
  for (int b = 0; b < model.misconceptions; ++b) {
    const MisconceptionSpec& spec = people.misconceptions[static_cast<std::size_t>(b)];
    const bool known = spec.rules_out >= 0 && spec.rules_out < model.techniques;
    if (!known || !(spec.weight > 0 && spec.weight <= 1)) {
      return fail("mastery-range", "misconception " + std::to_string(b),
                  "it must rule out one of the techniques, and weigh in (0,1]");
    }
    model.rules_out[static_cast<std::size_t>(b)] = spec.rules_out;
    const int index = model.techniques + b;
    model.weight[static_cast<std::size_t>(index)] = k_misconception_worth * spec.weight;
  }
  return model;
}

bool inside_0_1(double x) { return x > 0 && x < 1; }

Result<Model> check_rates(Model model, const People& people, const UserMix& mix) {
  for (const TechniqueSpec& spec : people.techniques) {
    if (!inside_0_1(spec.error_rate)) {
      return fail("mastery-range", "technique", "error_rate must lie between 0 and 1");
    }
  }
  for (const MisconceptionSpec& spec : people.misconceptions) {
    if (!inside_0_1(spec.share)) {
      return fail("mastery-range", "misconception", "share must lie between 0 and 1");
    }
  }
  if (!inside_0_1(mix.practised) || !(mix.odds_factor >= 1 && mix.odds_factor <= 1000)) {
    return fail("mastery-range", "user mix",
                "practised must lie between 0 and 1, odds_factor in [1, 1000]");
  }
  return model;
}

double with_odds_times(double p, double factor) { return p * factor / (1 - p + p * factor); }

// P(state | one class of users): techniques are independent there.
double class_mass(const Model& model, const People& people, std::span<const double> rates,
                  Bits state) {
  double mass = 1;
  for (int k = 0; k < model.techniques; ++k) {
    const double rate = rates[static_cast<std::size_t>(k)];
    mass *= (state & bit(k)) != 0 ? rate : 1 - rate;
  }
  for (int b = 0; b < model.misconceptions; ++b) {
    const bool has = (state & bit(model.rules_out[static_cast<std::size_t>(b)])) != 0;
    const bool held = (state & bit(model.techniques + b)) != 0;
    const double share = people.misconceptions[static_cast<std::size_t>(b)].share;
    mass *= has ? (held ? 0 : 1) : (held ? share : 1 - share);
  }
  return mass;
}

}  // namespace

Bits Model::against(int technique) const {
  Bits found = 0;
  for (int b = 0; b < misconceptions; ++b) {
    if (rules_out[static_cast<std::size_t>(b)] == technique) found |= bit(techniques + b);
  }
  return found;
}

bool Model::feasible(Bits state) const {
  for (int b = 0; b < misconceptions; ++b) {
    const Bits pair = bit(techniques + b) | bit(rules_out[static_cast<std::size_t>(b)]);
    if ((state & pair) == pair) return false;
  }
  return true;
}

ClassRates class_rates(double error_rate, const UserMix& mix) {
  double low = 0;
  double high = 1;
  ClassRates rates;
  for (int round = 0; round < 64; ++round) {  // 64 halvings: to the last bit
    const double centre = (low + high) / 2;
    rates = {with_odds_times(centre, mix.odds_factor),
             with_odds_times(centre, 1 / mix.odds_factor)};
    const double share = mix.practised * rates.practised + (1 - mix.practised) * rates.fresh;
    (share < 1 - error_rate ? low : high) = centre;
  }
  return rates;
}

Result<Model> make_model(const People& people, const UserMix& mix) {
  Result<Model> model = start_model(people);
  if (model) model = check_rates(std::move(*model), people, mix);
  if (!model) return model;
  std::vector<double> practised;
  std::vector<double> fresh;
  for (const TechniqueSpec& spec : people.techniques) {
    const ClassRates rates = class_rates(spec.error_rate, mix);
    practised.push_back(rates.practised);
    fresh.push_back(rates.fresh);
  }
  model->prior.resize(model->states());
  double total = 0;
  for (Bits state = 0; state < model->prior.size(); ++state) {
    model->prior[state] = mix.practised * class_mass(*model, people, practised, state) +
                          (1 - mix.practised) * class_mass(*model, people, fresh, state);
    total += model->prior[state];
  }
  for (double& mass : model->prior) mass /= total;
  return model;
}

Result<Model> make_model(const People& people, std::vector<double> prior) {
  Result<Model> model = start_model(people);
  if (!model) return model;
  if (prior.size() != model->states()) {
    return fail("mastery-prior", "prior",
                std::to_string(prior.size()) +
                    " entries; one a state would be right: " + std::to_string(model->states()));
  }
  double total = 0;
  for (Bits state = 0; state < prior.size(); ++state) {
    const double mass = prior[state];
    if (!(mass >= 0 && mass <= 1) || (mass > 0 && !model->feasible(state))) {
      return fail("mastery-prior", "state " + std::to_string(state),
                  "must lie in [0,1], and be 0 where a misconception meets its technique");
    }
    total += mass;
  }
  if (!(total > 1 - 1e-9 && total < 1 + 1e-9)) {
    return fail("mastery-prior", "prior", "sums to " + std::to_string(total) + ", not to 1");
  }
  for (double& mass : prior) mass /= total;
  model->prior = std::move(prior);
  return model;
}

}  // namespace rehale::mastery
