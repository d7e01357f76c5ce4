import { type Checkpoint, holdCheckpoint } from "./checkpoint";

/** A certificate's checkpoint, and the hash that the log has at its place now, hex; null where it has no such event. */
export type Carried = {
  readonly certificate: string;
  readonly checkpoint: Checkpoint;
  readonly found: string | null;
};

export type Unheld = {
  readonly kind: "different" | "missing";
  readonly certificate: string;
  readonly sequence: number;
  /** The last event that a certificate vouches for and that is as it was; null where none is. */
  readonly holdsUpTo: number | null;
};

/**
 * The first checkpoint that the log does not hold, or null. Chain and head cannot tell a log rewritten with all its
 * hashes from the one it was: what certificates took with them can.
 */
export const firstUnheld = (carried: readonly Carried[]): Unheld | null => {
  let holdsUpTo: number | null = null;
  for (const { certificate, checkpoint, found } of carried.toSorted(bySequence)) {
    const { sequence } = checkpoint;
    const held = holdCheckpoint(checkpoint, found);
    if (held !== "same") return { kind: held, certificate, sequence, holdsUpTo };
    holdsUpTo = sequence;
  }
  return null;
};

function bySequence(a: Carried, b: Carried): number {
  return a.checkpoint.sequence - b.checkpoint.sequence;
}

/** For the audit page and for `rederive`: what was done to the log, and what to do now. */
export const describeUnheld = ({ kind, certificate, sequence, holdsUpTo }: Unheld): string => {
  const since = holdsUpTo === null ? "" : ` It holds up to event ${holdsUpTo}.`;
  return kind === "different"
    ? `The log was rewritten: its event ${sequence} is not the one that certificate ${certificate} was signed over.${since} Keep a copy of the database as it is, look for the backup whose log has the hash on that certificate, and find out who can write to the database.`
    : `The log was cut or set back: it ends before event ${sequence}, which certificate ${certificate} was signed over.${since} Keep a copy of the database as it is. If an older backup was restored, restore a later one; if not, find out who can write to the database.`;
};
