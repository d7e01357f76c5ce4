import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

type Facts = {
  readonly day: string;
  readonly configuration: Pick<GatePlan["configuration"], "name" | "characterisation">;
};

const source = "ISO/IEC 17025:2017, 6.4.4 and 6.4.7";

const assess = ({ configuration, day }: Facts): readonly Found[] => {
  const { characterisation, name } = configuration;
  if (characterisation && characterisation.validUntil >= day) return [];
  return [
    {
      code: "characterisation-in-date",
      outcome: "breach",
      subject: "",
      reason: characterisation
        ? `The characterisation of ${name} was valid until ${characterisation.validUntil}.`
        : `${name} was not characterised by ${day}.`,
      remedy: characterisation ? "Characterise it anew." : "Record its characterisation under Furnaces.",
      source,
    },
  ];
};

export const characterisationInDate = {
  code: "characterisation-in-date",
  heading: "equipment",
  fine: "The furnace's characterisation is in date.",
  source,
  assess,
} as const satisfies GateCheck;
