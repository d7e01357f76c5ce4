/** What an action gives back to its form. `values` are what was typed, so that a refusal loses nothing. */
export type FormState =
  | { status: "idle" }
  | {
      status: "refused";
      message: string;
      fields: Record<string, string>;
      values: Record<string, string | string[]>;
    }
  | {
      status: "done";
      message: string;
      /** Stored, but what was stored is not good news: this word stands in place of "Done". */
      caution?: string;
    };
