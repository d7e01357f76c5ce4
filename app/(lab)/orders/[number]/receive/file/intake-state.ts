import type { IntakePreview } from "@/lib/views/order/intake-preview";
import type { FormState } from "@/lib/web/form-state";

/** A list looked at and not stored; it goes back with the form, so that what was looked at is what is stored. */
export type LookedAt = {
  readonly preview: IntakePreview;
  readonly fileName: string;
  readonly base64: string;
  /** The line chosen when it was looked at; empty = as the list says. */
  readonly position: string;
};

export type IntakeState = { readonly form: FormState; readonly looked: LookedAt | null };
