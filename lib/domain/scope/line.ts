import type { Capability } from "../evidence/capability";
import type { TypeLetter } from "../evidence/schema";

/** A line of the laboratory's scope as stored. Days are "YYYY-MM-DD", both included. */
export type StoredScopeLine = {
  readonly id: string;
  readonly typeLetter: TypeLetter;
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly capability: Capability;
  readonly validFrom: string;
  readonly validUntil: string | null;
  readonly source: string;
  readonly recordedAt: Date;
  readonly version: number;
};

type Days = Pick<StoredScopeLine, "validFrom" | "validUntil">;

export const isInForce = ({ validFrom, validUntil }: Days, day: string): boolean =>
  validFrom <= day && (validUntil === null || day <= validUntil);
