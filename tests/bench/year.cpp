// The year's minute loop of lib/engineering/simulation/year-loop.ts and the coil it calls, once more in C++: the yardstick of `npm run bench`.
// It reads the plan as one list of doubles (year-in-cpp.ts writes it in the order in which it is read here), runs it a few times and
// prints the median milliseconds and some sums, by which the bench sees that both computed the same year.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <vector>

namespace {

constexpr double massRatio = 0.621945, dryAirHeat = 0.24, vapourAt0 = 1061, vapourHeat = 0.444;
constexpr double btuhPerW = 3.412, gas = 0.370486, condensingHeat = 1054;

double saturationPressure(double t) {
  if (t > 32.018) {
    const double x = (t - 86) / 54, x2 = x * x, x4 = x2 * x2;
    return 0.6158343514 + 1.060559034 * x + (0.793952288 + 0.3313173256 * x) * x2 +
           (0.08065500268 + 0.01019658593 * x + (1.853986178e-4 - 9.913165036e-5 * x) * x2) * x4 -
           4.328687827e-6 * x4 * x4;
  }
  const double x = (t - 11) / 21, x2 = x * x;
  return 0.03248026735 + 0.0340744057 * x + (0.01634365165 + 0.004711826321 * x) * x2 +
         (9.009910524e-4 + 1.189147447e-4 * x + 1.018257975e-5 * x2) * x2 * x2;
}

double saturationPressureSlope(double t) {
  if (t > 32.018) {
    const double x = (t - 86) / 54, x2 = x * x, x4 = x2 * x2;
    return (1.060559034 + 2 * 0.793952288 * x + (3 * 0.3313173256 + 4 * 0.08065500268 * x) * x2 +
            (5 * 0.01019658593 + 6 * 1.853986178e-4 * x + (7 * -9.913165036e-5 + 8 * -4.328687827e-6 * x) * x2) * x4) /
           54;
  }
  const double x = (t - 11) / 21, x2 = x * x;
  return (0.0340744057 + 2 * 0.01634365165 * x + (3 * 0.004711826321 + 4 * 9.009910524e-4 * x) * x2 +
          (5 * 1.189147447e-4 + 6 * 1.018257975e-5 * x) * x2 * x2) /
         21;
}

double saturationRatio(double t, double p) {
  const double vapour = saturationPressure(t);
  return massRatio * vapour / (p - vapour);
}
double vapourEnthalpy(double t) { return vapourAt0 + vapourHeat * t; }
double enthalpy(double t, double w) { return dryAirHeat * t + w * vapourEnthalpy(t); }
double heatCapacity(double w) { return dryAirHeat + vapourHeat * w; }
double dryBulbAt(double h, double w) { return (h - vapourAt0 * w) / heatCapacity(w); }

double solveSaturated(double tWeight, double hWeight, double target, double p, double start, double highest) {
  double t = start;
  for (int step = 0; step < 40; step++) {
    const double vapour = saturationPressure(t), perDry = 1 / (p - vapour), w = massRatio * vapour * perDry;
    const double h = vapourEnthalpy(t);
    const double excess = tWeight * t + hWeight * (0.24 * t + w * h) - target;
    const double slope =
        tWeight + hWeight * (heatCapacity(w) + h * massRatio * p * saturationPressureSlope(t) * perDry * perDry);
    const double move = excess / slope;
    t = std::min(t - move, highest);
    if (std::abs(move) < 1e-4) return t;
  }
  std::fprintf(stderr, "not settled\n");
  std::exit(1);
}

struct Coil {
  double pressure, held, fixedApproach, approachSlope, frost, frostRatio, flow, bypass, contact;
};
struct CoilOut {
  double total = 0, sensible = 0, moisture = 0, adp = 0;
  int limitedBy = 0;
};

double surfaceEnthalpy(double adp, double w, double p) { return enthalpy(adp, std::min(saturationRatio(adp, p), w)); }

double surfaceTemperature(double h, double w, double p, double start, double highest) {
  const double dry = dryBulbAt(h, w);
  if (dry > 0 && saturationRatio(dry, p) >= w) return dry;
  return solveSaturated(0, 1, h, p, start, highest);
}

double heldAdp(const Coil& c, double t, double w, double h, double contact, double least, double start) {
  if (least >= t) return t;
  const double gain = c.approachSlope * contact, dryGain = gain * heatCapacity(w);
  const double dry = (least + dryGain * t) / (1 + dryGain);
  if (saturationRatio(dry, c.pressure) >= w) return dry;
  if (gain == 0) return least;
  return solveSaturated(1, gain, least + gain * h, c.pressure, start, t);
}

void writeAir(double p, double t, double w, double h, double flow, double bypass, double adp, double total, CoilOut& out) {
  const double drying = w - saturationRatio(adp, p);
  double leavingW = drying > 0 ? w - (1 - bypass) * drying : w;
  const double leavingH = h - total / flow;
  double leavingT = dryBulbAt(leavingH, leavingW);
  if (drying > 0 && leavingW > saturationRatio(leavingT, p)) {
    leavingT = solveSaturated(0, 1, leavingH, p, leavingT, t);
    leavingW = saturationRatio(leavingT, p);
  }
  out.moisture = flow * (w - leavingW);
  out.total = total;
  out.sensible = total - out.moisture * vapourEnthalpy(t);
  out.adp = adp;
}

void solveCoil(const Coil& c, double t, double w, double ceiling, double minimum, CoilOut& out) {
  const double contact = c.contact, h = enthalpy(t, w);
  const double frostBtuh = contact * (h - enthalpy(c.frost, std::min(c.frostRatio, w)));
  const double least = c.held + c.fixedApproach, atCeiling = std::min(least + c.approachSlope * ceiling, t);
  const double start = out.adp > c.frost && out.adp < t ? out.adp : atCeiling;
  int limitedBy = 0;
  double total = frostBtuh, adp = c.frost;
  if (frostBtuh > ceiling && contact * (h - surfaceEnthalpy(atCeiling, w, c.pressure)) > ceiling) {
    limitedBy = 1;
    total = ceiling;
    adp = surfaceTemperature(h - ceiling / contact, w, c.pressure, start, t);
  } else if (frostBtuh < minimum || least + c.approachSlope * frostBtuh < c.frost) {
    limitedBy = 3;
  } else {
    adp = heldAdp(c, t, w, h, contact, least, start);
    total = contact * (h - surfaceEnthalpy(adp, w, c.pressure));
    if (total < minimum) {
      limitedBy = 2;
      total = minimum;
      adp = surfaceTemperature(h - minimum / contact, w, c.pressure, adp, t);
    }
  }
  writeAir(c.pressure, t, w, h, c.flow, c.bypass, adp, total, out);
  out.limitedBy = limitedBy;
}

bool solveCoilAtCapacity(const Coil& c, double t, double w, double total, CoilOut& out) {
  const double h = enthalpy(t, w), surface = h - total / c.contact;
  if (surface < enthalpy(c.frost, std::min(c.frostRatio, w))) return false;
  const double adp = surfaceTemperature(surface, w, c.pressure, t, t);
  writeAir(c.pressure, t, w, h, c.flow, c.bypass, adp, total, out);
  out.limitedBy = 1;
  return true;
}

struct Stage {
  Coil coil, atFrost;
  double share, minimum, fanW;
};
struct Plan {
  int hours, stepsPerHour, stageCount;
  double pressure, ventilationCfm, pauseAbove, airLb, bufferLb, bufferLbPerH, stack2, wind2, referenceDeficit, limitPct;
  double conductance, airCapacity, massCapacity, coupling, radiantShare;
  double coolF, heatF, dryAbove, noCoolingBelow, pump17, pump47, auxiliaryKw, w82, w95, settling, startTau, coilHolds, firstEvaporation;
  double offset1, offset2, minRun, minRest, stepBack, runOnS, past, fanMode, fanMinutes;
  double hasDryer, dryerW, dryerStart, dryerStop, dryerPerRatio;
  std::vector<Stage> stages;
  std::vector<double> outdoorF, outdoorRatio, wind, sun, ceiling, ventilationHour, gains, moisture;
};

struct State {
  double air, mass, w, buffer, coilLb, stage, minutes, runOn, startLeft, capacity, following, dryerOn;
};
struct Totals {
  double conduction = 0, outdoorAir = 0, sun = 0, gains = 0, fan = 0, dryer = 0, pump = 0, auxiliary = 0, coilSensible = 0,
         evaporationBtu = 0, surfaceBtu = 0, inside = 0, outdoorLb = 0, taken = 0, evaporated = 0, drained = 0, dryerLb = 0,
         surfaceLb = 0, compressorWh = 0, fanWh = 0, dryerWh = 0, dryerH = 0, fanH = 0, firstH = 0, secondH = 0, below = 0,
         above = 0, starts = 0, frostH = 0, hottest = 0, coldest = 1e9, wetMinutes = 0;
  std::vector<double> humidityMinutes = std::vector<double>(101), runs = std::vector<double>(241), hourF, hourRh, hourWet, hourRun;
};

int nextStage(int stage, double minutes, double above, double past, const Plan& p) {
  const bool wantsSecond = p.stageCount > 1 && above >= p.offset2;
  if (stage == 0) return minutes < p.minRest || above < p.offset1 ? 0 : wantsSecond ? 2 : 1;
  if (above <= -past && minutes >= p.minRun) return 0;
  if (stage == 1) return wantsSecond ? 2 : 1;
  return p.stepBack != 0 && above <= p.offset1 ? 1 : 2;
}

double idleFanSeconds(const Plan& p, double runOn, double minute, double fanMinutes, double stepS) {
  if (p.fanMode == 2) return stepS;
  const double on = std::min(stepS, runOn);
  if (p.fanMode == 0) return on;
  const double owed = p.fanMinutes - fanMinutes;
  return owed > 0 && owed >= 60 - minute ? stepS : on;
}

double coilWaterAfterFan(double store, double full, double rate, double hours) {
  const double left = std::sqrt(store / full) - rate * hours / (2 * full);
  return left > 0 ? full * left * left : 0;
}

void runHours(const Plan& p, State& s, int from, int to, Totals& o) {
  const Stage& first = p.stages[0];
  const Stage& second = p.stageCount > 1 ? p.stages[1] : first;
  const double h = 1.0 / p.stepsPerHour, stepMin = 60.0 / p.stepsPerHour, stepS = 60 * stepMin;
  const double startKept = std::exp(-stepS / p.startTau), stepOverTau = stepS / p.startTau;
  const double follow = p.settling > 0 ? 1 - std::exp(-std::log(50.0) * stepMin / p.settling) : 1;
  const double air2 = 2 * p.airCapacity / h, mass2 = 2 * p.massCapacity / h, massRow = mass2 + p.coupling;
  const double water2 = 2 * p.airLb / h, buffer2 = 2 * p.bufferLb / h, bufferRow = buffer2 + p.bufferLbPerH;
  const double auxiliaryMost = p.auxiliaryKw * 1000 * btuhPerW, heatSlope = (p.pump47 - p.pump17) / 30;
  const double powerSlope = (p.w95 - p.w82) / 13;
  CoilOut coil, lagged;
  double satPsia = saturationPressure(s.air), wetBulb = s.air;
  for (int hour = from; hour < to; hour++) {
    const int before = hour == 0 ? p.hours - 1 : hour - 1;
    const double out0 = p.outdoorF[before], outSpan = p.outdoorF[hour] - out0;
    const double ratio0 = p.outdoorRatio[before], ratioSpan = p.outdoorRatio[hour] - ratio0;
    const double wind0 = p.wind[before], windSpan = p.wind[hour] - wind0;
    const double ceiling0 = p.ceiling[before], ceilingSpan = p.ceiling[hour] - ceiling0;
    const int clock = hour % 24;
    const double sun = p.sun[hour], gains = p.gains[clock], inside = p.moisture[clock];
    const double fanCfm = p.ventilationHour[clock] * p.ventilationCfm;
    double fanMinutes = 0, wetMinutes = 0, runMinutes = 0, humiditySum = 0;
    for (int step = 0; step < p.stepsPerHour; step++) {
      const double share = (step + 0.5) * h;
      const double outF = out0 + outSpan * share, outRatio = ratio0 + ratioSpan * share, wind = wind0 + windSpan * share;
      const double humidity = 100 * p.pressure * s.w / ((massRatio + s.w) * satPsia);
      const double past = humidity > p.dryAbove ? p.past : 0;
      int next = nextStage(static_cast<int>(s.stage), s.minutes, s.air - p.coolF, past, p);
      if (outF < p.noCoolingBelow) next = 0;
      if (next != s.stage) {
        if (s.stage == 0) {
          o.starts++;
          s.startLeft = 1;
          s.following = 0;
          s.minutes = 0;
        } else if (next == 0) {
          o.runs[std::min(240, static_cast<int>(std::lround(s.minutes)))]++;
          s.runOn = p.runOnS;
          s.minutes = 0;
        } else {
          s.following = p.settling > 0 ? 1 : 0;
        }
        s.stage = next;
      }
      s.minutes += stepMin;
      double cooling = 0, taken = 0, evaporated = 0, fanW = 0;
      if (s.stage > 0) {
        const Stage& set = s.stage == 1 ? first : second;
        const double ceiling = (ceiling0 + ceilingSpan * share) * set.share, least = std::min(set.minimum, ceiling);
        solveCoil(set.coil, s.air, s.w, ceiling, least, coil);
        const CoilOut* now = &coil;
        if (s.following == 1) {
          s.capacity += (coil.total - s.capacity) * follow;
          if (std::abs(s.capacity - coil.total) < 0.001 * coil.total) {
            s.following = 0;
          } else {
            if (!solveCoilAtCapacity(set.coil, s.air, s.w, s.capacity, lagged))
              solveCoil(set.atFrost, s.air, s.w, s.capacity, 0, lagged);
            now = &lagged;
          }
        } else {
          s.capacity = coil.total;
        }
        double part = 1;
        if (s.startLeft > 1e-6) {
          const double left = s.startLeft * startKept;
          part = 1 - (s.startLeft - left) / stepOverTau;
          s.startLeft = left;
        }
        cooling = now->sensible * part;
        taken = now->moisture * part;
        if (coil.limitedBy == 3) o.frostH += h;
        s.coilLb += taken * h;
        if (s.coilLb > p.coilHolds) {
          o.drained += s.coilLb - p.coilHolds;
          s.coilLb = p.coilHolds;
        }
        fanW = set.fanW;
        o.fanH += h;
        fanMinutes += stepMin;
        runMinutes += stepMin;
        (s.stage == 1 ? o.firstH : o.secondH) += h;
        o.compressorWh += now->total * h * (p.w82 + powerSlope * (std::max(outF, 67.0) - 82));
        if (s.air < p.coolF) o.below += (p.coolF - s.air) * h;
        o.coldest = std::min(o.coldest, s.air);
      } else {
        const double idleS = idleFanSeconds(p, s.runOn, step * stepMin, fanMinutes, stepS);
        s.runOn = s.runOn > stepS ? s.runOn - stepS : 0;
        if (idleS > 0) {
          const double idle = idleS / stepS;
          fanW = first.fanW * idle;
          o.fanH += h * idle;
          fanMinutes += stepMin * idle;
          if (s.coilLb > 0) {
            wetBulb = solveSaturated(0, 1, enthalpy(s.air, s.w), p.pressure, wetBulb, s.air);
            const double deficit = saturationRatio(wetBulb, p.pressure) - s.w;
            const double rate = p.firstEvaporation * std::max(0.0, deficit) / p.referenceDeficit;
            const double left = coilWaterAfterFan(s.coilLb, p.coilHolds, rate, h * idle);
            evaporated = (s.coilLb - left) / h;
            s.coilLb = left;
          }
        }
      }
      double dried = 0, dryerW = 0;
      if (p.hasDryer != 0) {
        if (humidity > p.dryerStart) s.dryerOn = 1;
        else if (humidity < p.dryerStop) s.dryerOn = 0;
        if (s.dryerOn == 1) {
          dried = p.dryerPerRatio * s.w;
          dryerW = p.dryerW;
          o.dryerH += h;
        }
      }
      const double leakCfm = std::sqrt(p.stack2 * std::abs(s.air - outF) + p.wind2 * wind * wind);
      const double outCfm = leakCfm + (outRatio > p.pauseAbove ? 0 : fanCfm);
      const double outLb = outCfm * 60 * p.pressure / (gas * (outF + 459.67) * (1 + 1.607858 * outRatio));
      const double outHeat = outLb * (0.24 + vapourHeat * outRatio);
      const double evaporationHeat = evaporated * vapourEnthalpy(s.air);
      const double dryerHeat = dryerW * btuhPerW + dried * condensingHeat, fanHeat = fanW * btuhPerW;
      const double radiant = (sun + gains) * p.radiantShare;
      const double toAir = sun + gains - radiant + fanHeat + dryerHeat - cooling - evaporationHeat;
      const double conductance = p.conductance + outHeat;
      const double determinant = (air2 + conductance + p.coupling) * massRow - p.coupling * p.coupling;
      const double airRight = air2 * s.air + toAir + conductance * outF, massRight = mass2 * s.mass + radiant;
      double mean = (airRight * massRow + p.coupling * massRight) / determinant;
      if (2 * mean - s.air < p.heatF) {
        const double wanted = ((p.heatF + s.air) / 2 - mean) * determinant / massRow;
        const double pump = std::max(0.0, std::min(wanted, p.pump17 + heatSlope * (outF - 17)));
        const double auxiliary = std::min(wanted - pump, auxiliaryMost);
        mean += (pump + auxiliary) * massRow / determinant;
        o.pump += pump * h;
        o.auxiliary += auxiliary * h;
      }
      const double meanMass = (massRight + p.coupling * mean) / massRow, airBefore = s.air;
      s.air = 2 * mean - s.air;
      s.mass = 2 * meanMass - s.mass;
      const double source = inside + evaporated - taken - dried, waterRow = water2 + outLb + p.bufferLbPerH;
      const double meanW = ((water2 * s.w + source + outLb * outRatio) * bufferRow + p.bufferLbPerH * buffer2 * s.buffer) /
                           (waterRow * bufferRow - p.bufferLbPerH * p.bufferLbPerH);
      const double meanBuffer = (buffer2 * s.buffer + p.bufferLbPerH * meanW) / bufferRow;
      s.w = 2 * meanW - s.w;
      s.buffer = 2 * meanBuffer - s.buffer;
      satPsia = saturationPressure(s.air);
      const double most = massRatio * satPsia / (p.pressure - satPsia);
      if (s.w > most) {
        const double fallen = p.airLb * (s.w - most);
        s.w = most;
        o.surfaceLb += fallen;
        o.surfaceBtu += fallen * condensingHeat;
        s.air += fallen * condensingHeat / p.airCapacity;
        satPsia = saturationPressure(s.air);
      }
      o.conduction += p.conductance * (outF - mean) * h;
      o.outdoorAir += outHeat * (outF - mean) * h;
      o.sun += sun * h;
      o.gains += gains * h;
      o.fan += fanHeat * h;
      o.dryer += dryerHeat * h;
      o.coilSensible += cooling * h;
      o.evaporationBtu += evaporationHeat * h;
      o.inside += inside * h;
      o.outdoorLb += outLb * (outRatio - meanW) * h;
      o.taken += taken * h;
      o.evaporated += evaporated * h;
      o.dryerLb += dried * h;
      o.fanWh += fanW * h;
      o.dryerWh += dryerW * h;
      const double rh = 100 * p.pressure * s.w / ((massRatio + s.w) * satPsia);
      humiditySum += rh;
      o.humidityMinutes[std::min(100, static_cast<int>(rh))] += stepMin;
      if (rh > p.limitPct) wetMinutes += stepMin;
      o.hottest = std::max(o.hottest, s.air);
      const double over = airBefore - p.coolF - p.offset1;
      if (over > 0) o.above += over * h;
    }
    o.hourF[hour] = s.air;
    o.hourRh[hour] = humiditySum * h;
    o.hourWet[hour] = wetMinutes;
    o.hourRun[hour] = runMinutes;
    o.wetMinutes += wetMinutes;
  }
}

Plan readPlan(const char* path) {
  std::FILE* file = std::fopen(path, "rb");
  if (file == nullptr) std::exit(1);
  auto one = [file] {
    double value = 0;
    if (std::fread(&value, sizeof value, 1, file) != 1) std::exit(1);
    return value;
  };
  auto many = [&one](int count) {
    std::vector<double> values(count);
    for (double& value : values) value = one();
    return values;
  };
  auto coil = [&one] {
    Coil c;
    for (double* field : {&c.pressure, &c.held, &c.fixedApproach, &c.approachSlope, &c.frost, &c.frostRatio, &c.flow, &c.bypass, &c.contact})
      *field = one();
    return c;
  };
  Plan p;
  p.hours = static_cast<int>(one());
  p.stepsPerHour = static_cast<int>(one());
  p.stageCount = static_cast<int>(one());
  for (double* field :
       {&p.pressure, &p.ventilationCfm, &p.pauseAbove, &p.airLb, &p.bufferLb, &p.bufferLbPerH, &p.stack2, &p.wind2,
        &p.referenceDeficit, &p.limitPct, &p.conductance, &p.airCapacity, &p.massCapacity, &p.coupling, &p.radiantShare,
        &p.coolF, &p.heatF, &p.dryAbove, &p.noCoolingBelow, &p.pump17, &p.pump47, &p.auxiliaryKw, &p.w82, &p.w95, &p.settling,
        &p.startTau, &p.coilHolds, &p.firstEvaporation, &p.offset1, &p.offset2, &p.minRun, &p.minRest, &p.stepBack, &p.runOnS,
        &p.past, &p.fanMode, &p.fanMinutes, &p.hasDryer, &p.dryerW, &p.dryerStart, &p.dryerStop, &p.dryerPerRatio})
    *field = one();
  for (int stage = 0; stage < p.stageCount; stage++) {
    Stage s;
    s.coil = coil();
    s.atFrost = coil();
    for (double* field : {&s.share, &s.minimum, &s.fanW}) *field = one();
    p.stages.push_back(s);
  }
  for (auto* values : {&p.outdoorF, &p.outdoorRatio, &p.wind, &p.sun, &p.ceiling}) *values = many(p.hours);
  for (auto* values : {&p.ventilationHour, &p.gains, &p.moisture}) *values = many(24);
  std::fclose(file);
  return p;
}

Totals emptyTotals(const Plan& p) {
  Totals totals;
  for (auto* values : {&totals.hourF, &totals.hourRh, &totals.hourWet, &totals.hourRun}) values->resize(p.hours);
  return totals;
}

}  // namespace

int main(int count, char** given) {
  if (count != 3) return 1;
  const Plan p = readPlan(given[1]);
  std::vector<double> took;
  Totals totals = emptyTotals(p);
  for (int turn = 0; turn < std::atoi(given[2]); turn++) {
    totals = emptyTotals(p);
    Totals runIn = emptyTotals(p);
    State s{};
    s.air = std::max(p.heatF, std::min(p.coolF, p.outdoorF[0]));
    s.mass = s.air;
    s.w = s.buffer = saturationRatio(s.air, p.pressure) / 2;
    s.minutes = p.minRest;
    const auto start = std::chrono::steady_clock::now();
    runHours(p, s, 0, std::min(336, p.hours), runIn);
    runHours(p, s, 0, p.hours, totals);
    took.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  std::sort(took.begin(), took.end());
  std::printf("%.17g %.17g %.17g %.17g %.17g\n", took[took.size() / 2], totals.wetMinutes / 60, totals.drained, totals.coilSensible,
              totals.starts);
  return 0;
}
