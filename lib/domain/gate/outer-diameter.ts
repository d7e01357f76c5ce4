import type { SensorBuild } from "../sensor/build";

/** What has to go into a bore; null where it is not stated. */
export const outerDiameterOf = (build: SensorBuild): number | null =>
  build.sheath === "none" ? (build.wireMillimetre ?? null) : (build.sheathMillimetre ?? null);
