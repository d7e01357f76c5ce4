import { number, optionalNumber, parseDecimal, rows, text } from "@/lib/web/form-fields";

const orNull = (data: FormData, name: string): number | null => optionalNumber(data, name) ?? null;

export const parseFurnace = (data: FormData) => ({
  name: text(data, "name"),
  maker: text(data, "maker"),
  serial: text(data, "serial"),
  minimumCelsius: number(data, "minimumCelsius"),
  maximumCelsius: number(data, "maximumCelsius"),
  boreMillimetre: number(data, "boreMillimetre"),
  lengthMillimetre: number(data, "lengthMillimetre"),
  zones: number(data, "zones"),
  bestImmersionMillimetre: orNull(data, "bestImmersionMillimetre"),
  workingLengthMillimetre: orNull(data, "workingLengthMillimetre"),
  controllerSetpoints: rows(data, "controllerSetpoints", ["celsius", "controllerCelsius"]).map((row) => ({
    celsius: parseDecimal(row.celsius ?? ""),
    controllerCelsius: parseDecimal(row.controllerCelsius ?? ""),
  })),
  rampUpCelsiusPerHour: orNull(data, "rampUpCelsiusPerHour"),
  rampDownCelsiusPerHour: orNull(data, "rampDownCelsiusPerHour"),
});

export const parseConfiguration = (data: FormData) => ({
  furnaceId: text(data, "furnaceId"),
  name: text(data, "name"),
  kind: text(data, "kind"),
  places: number(data, "places"),
  immersionMillimetre: number(data, "immersionMillimetre"),
  bores: rows(data, "bores", ["number", "diameterMillimetre", "xMillimetre", "yMillimetre"]).map((row) => ({
    number: row.number ?? "",
    diameterMillimetre: parseDecimal(row.diameterMillimetre ?? ""),
    xMillimetre: parseDecimal(row.xMillimetre ?? ""),
    yMillimetre: parseDecimal(row.yMillimetre ?? ""),
  })),
  bundleDiameterMillimetre: orNull(data, "bundleDiameterMillimetre"),
});

/** "300; 700; 1100" or with spaces: a comma may be a decimal mark and separates nothing. */
const temperatures = (typed: string): number[] =>
  typed
    .split(/[\s;]+/)
    .filter((part) => part !== "")
    .map(parseDecimal);

export const parsePlan = (data: FormData) => ({
  configurationId: text(data, "configurationId"),
  plan: {
    temperatures: temperatures(text(data, "plan.temperatures")),
    fromMillimetre: number(data, "plan.fromMillimetre"),
    toMillimetre: number(data, "plan.toMillimetre"),
    windowMinutes: number(data, "plan.windowMinutes"),
    probe: text(data, "plan.probe"),
    probeType: text(data, "plan.probeType"),
    monitor: text(data, "plan.monitor"),
    monitorType: text(data, "plan.monitorType"),
    probeInhomogeneityPercent: number(data, "plan.probeInhomogeneityPercent"),
    meterMicrovolt: number(data, "plan.meterMicrovolt"),
  },
});

export const parseDecision = (data: FormData) => ({
  id: text(data, "id"),
  decision: text(data, "decision"),
  reason: text(data, "reason"),
});

export const parseInhomogeneity = (data: FormData) => ({
  tag: text(data, "tag"),
  performedOn: text(data, "performedOn"),
  readings: {
    method: text(data, "readings.method"),
    celsius: number(data, "readings.celsius"),
    outsideCelsius: number(data, "readings.outsideCelsius"),
    meterMicrovolt: number(data, "readings.meterMicrovolt"),
    medium: text(data, "readings.medium"),
    rows: rows(data, "readings.rows", ["millimetre", "microvolt", "monitorCelsius"]).map((row) => ({
      millimetre: parseDecimal(row.millimetre ?? ""),
      microvolt: parseDecimal(row.microvolt ?? ""),
      monitorCelsius: parseDecimal(row.monitorCelsius ?? ""),
    })),
  },
});
