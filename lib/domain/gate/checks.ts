import { characterisationInDate } from "./equipment/characterisation-in-date";
import { equipmentInDate } from "./equipment/equipment-in-date";
import { furnaceInService } from "./equipment/furnace-in-service";
import { junctionThermometerInDate } from "./equipment/junction-thermometer-in-date";
import { procedureCurrent } from "./equipment/procedure-current";
import type { GateCheck } from "./finding";
import { boreFit } from "./immersion/bore-fit";
import { immersion } from "./immersion/immersion";
import { immersionInDiameters } from "./immersion/immersion-in-diameters";
import { shallowerThanUsed } from "./immersion/shallower-than-used";
import { shortSensor } from "./immersion/short-sensor";
import { channelTwice } from "./load/channel-twice";
import { inAnotherRun } from "./load/in-another-run";
import { itemTwice } from "./load/item-twice";
import { junctionTemperature } from "./load/junction-temperature";
import { placeTwice } from "./load/place-twice";
import { tooManyPlaces } from "./load/too-many-places";
import { whoIsThere } from "./load/who-is-there";
import { leadNearHeat } from "./materials/lead-near-heat";
import { oxidisesInAir } from "./materials/oxidises-in-air";
import { platinumUnsheathed } from "./materials/platinum-unsheathed";
import { sheathLimit } from "./materials/sheath-limit";
import { wireLimit } from "./materials/wire-limit";
import { ascendingOrder } from "./metal/ascending-order";
import { doneHere } from "./metal/done-here";
import { orderAccepted } from "./metal/order-accepted";
import { usedBaseMetal } from "./metal/used-base-metal";
import { classRange } from "./range/class-range";
import { furnaceRange } from "./range/furnace-range";
import { referenceRange } from "./range/reference-range";
import { typeRange } from "./range/type-range";
import { channelZero } from "./same-day/channel-zero";
import { junctionByThermometer } from "./same-day/junction-by-thermometer";
import { shortedZero } from "./same-day/shorted-zero";
import { tipsWarmed } from "./same-day/tips-warmed";
import { voltagePoint } from "./same-day/voltage-point";
import { warmUp } from "./same-day/warm-up";
import { afterExposure } from "./setpoints/after-exposure";
import { exposure } from "./setpoints/exposure";
import { largestInterval } from "./setpoints/largest-interval";
import { rangeOfUse } from "./setpoints/range-of-use";

/** All rules of the gate in the order they are shown under their headings. */
export const gateChecks: readonly GateCheck[] = [
  typeRange,
  furnaceRange,
  referenceRange,
  classRange,
  rangeOfUse,
  largestInterval,
  exposure,
  afterExposure,
  leadNearHeat,
  sheathLimit,
  wireLimit,
  platinumUnsheathed,
  oxidisesInAir,
  immersion,
  shortSensor,
  shallowerThanUsed,
  immersionInDiameters,
  boreFit,
  whoIsThere,
  placeTwice,
  channelTwice,
  itemTwice,
  tooManyPlaces,
  junctionTemperature,
  inAnotherRun,
  orderAccepted,
  doneHere,
  ascendingOrder,
  usedBaseMetal,
  procedureCurrent,
  furnaceInService,
  characterisationInDate,
  ...equipmentInDate,
  junctionThermometerInDate,
  warmUp,
  shortedZero,
  channelZero,
  voltagePoint,
  junctionByThermometer,
  tipsWarmed,
];
