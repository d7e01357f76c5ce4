import type { EquipmentKind, EquipmentState } from "../equipment/types";
import type { Provider } from "../provider/types";
import { ok, type Result, refuse } from "../refusal";
import { rangeOfFindings } from "./calibrated-range";
import type { CalibrationInput } from "./schema";

type Given = {
  readonly equipment: { readonly kind: EquipmentKind; readonly state: EquipmentState };
  readonly input: CalibrationInput;
  readonly provider: Provider | null;
  readonly today: string;
  /** Certificates on record for it that were not rejected. */
  readonly standing: readonly string[];
};

const issuerProblems = ({ input, provider }: Given): Record<string, string> => {
  if (input.route === "in-house") return {};
  const fields: Record<string, string> = {};
  if (!provider) fields.issuer = "This issuer is not on record. Record it under Providers first.";
  else if (provider.route !== input.route)
    fields.route = "This is not what the issuer is recorded as under Providers.";
  if (input.route === "accredited" && input.accreditation === "" && !provider?.accreditation)
    fields.accreditation = "Write the accreditation the certificate was issued under.";
  if (input.route === "other" && input.justification === "")
    fields.justification =
      "Say why this route reaches the SI: no institute and no accreditation vouches for it.";
  if (!input.document) fields.document = "Choose the certificate’s file: it is kept as evidence.";
  return fields;
};

const rangeProblems = ({ fromCelsius, toCelsius, findings }: CalibrationInput): Record<string, string> => {
  const found = rangeOfFindings(findings);
  const fields: Record<string, string> = {};
  if (
    found &&
    fromCelsius !== undefined &&
    (fromCelsius < found.fromCelsius || fromCelsius >= found.toCelsius)
  )
    fields.fromCelsius = `The certificate's values hold from ${found.fromCelsius} to ${found.toCelsius} °C.`;
  if (found && toCelsius !== undefined && (toCelsius > found.toCelsius || toCelsius <= found.fromCelsius))
    fields.toCelsius = `The certificate's values hold from ${found.fromCelsius} to ${found.toCelsius} °C.`;
  return fields;
};

/** Whether a certificate may be recorded as typed. A suspect thing may be calibrated, that is how it comes back. */
export const decideRecord = (given: Given): Result<null> => {
  const { equipment, input, today, standing } = given;
  if (equipment.state === "retired") return refuse("wrong-state", "This equipment is retired.");
  if (equipment.kind !== input.findings.kind)
    return refuse("invalid", "These findings belong to equipment of another kind. Nothing was stored.");
  const fields: Record<string, string> = { ...issuerProblems(given), ...rangeProblems(input) };
  if (input.performedOn > today) fields.performedOn = "This day has not come yet.";
  if (standing.includes(input.certificate))
    fields.certificate = "This certificate is recorded for this equipment already.";
  return Object.keys(fields).length === 0
    ? ok(null)
    : refuse("invalid", "Nothing was stored; what you typed is still here.", fields);
};
