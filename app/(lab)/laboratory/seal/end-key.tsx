import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import type { SealKeyRow } from "@/lib/views/seal/keys";
import { retireKeyAction, revokeKeyAction } from "./actions";

const short = (fingerprint: string): string => fingerprint.slice(0, 16);

/** The two ways in which a key ends; what each does to documents that are out there is said beside it. */
export function EndKey({ sealKey }: { readonly sealKey: SealKeyRow }) {
  const verb = sealKey.purpose === "seal" ? "seals" : "tells the time";
  const id = <input type="hidden" name="id" value={sealKey.id} />;
  const why = <TextField name="reason" label="Why" hint="Published with the list of keys." maxLength={300} />;
  return (
    <div>
      {sealKey.mayRetire ? (
        <Disclosure summary="Retire">
          <p className="quiet">It {verb} no more; what it did before stays good.</p>
          <ActionForm action={retireKeyAction} label={`Retire ${short(sealKey.fingerprint)}`}>
            {id}
            {why}
            <SubmitButton kind="quiet">Retire the key</SubmitButton>
          </ActionForm>
        </Disclosure>
      ) : null}
      {sealKey.mayRevoke ? (
        <Disclosure summary="Revoke">
          <p className="quiet">
            It was lost, or somebody else could use it: from that moment on nothing it{" "}
            {verb === "seals" ? "sealed" : "attested"} is trusted.{" "}
            {verb === "seals" ? "Without a timestamp, nothing that it ever sealed is." : ""} This cannot be
            undone.
          </p>
          <ActionForm action={revokeKeyAction} label={`Revoke ${short(sealKey.fingerprint)}`}>
            {id}
            {why}
            <TextField
              name="effectiveAt"
              label="Not to be trusted from"
              hint="As 2026-11-26 14:05, in UTC."
            />
            <SubmitButton kind="quiet">Revoke the key</SubmitButton>
          </ActionForm>
        </Disclosure>
      ) : null}
    </div>
  );
}
