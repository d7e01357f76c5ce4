/** Why the platform says no. One closed list; each code maps to one kind of answer in `lib/web`. */
export type RefusalCode =
  | "not-permitted" // the actor's roles do not allow it
  | "not-found" // not there, or not this customer's: the two look the same
  | "invalid" // the input does not hold; `fields` says where
  | "changed-meanwhile" // somebody saved in between
  | "wrong-state" // the thing is not at the step where this can be done
  | "rule" // a rule of the laboratory or the trade forbids it
  | "too-many"; // slow down

export type Refusal = {
  readonly code: RefusalCode;
  /** What happened, what was kept, what to do: one or two sentences for the person at the screen. */
  readonly message: string;
  /** Field name → what is wrong and the remedy. Names are those of the form. */
  readonly fields?: Readonly<Record<string, string>>;
  /** Field name → the rule that was broken, by its code. */
  readonly grounds?: Readonly<Record<string, string>>;
};

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Refusal };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });

export const refuse = (
  code: RefusalCode,
  message: string,
  fields?: Readonly<Record<string, string>>,
): { readonly ok: false; readonly refusal: Refusal } => ({
  ok: false,
  refusal: fields ? { code, message, fields } : { code, message },
});

/** Thrown by operations and views so that the transaction rolls back; `lib/web` turns it into the form's answer. */
export class Refused extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(refusal.message);
    this.name = "Refused";
    this.refusal = refusal;
  }
}

/** The value, or the refusal thrown. */
export const demand = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Refused(result.refusal);
  return result.value;
};
