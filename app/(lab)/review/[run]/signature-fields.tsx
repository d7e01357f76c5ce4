import Link from "next/link";
import { FieldGroup } from "@/app/_ui/field-group";
import { Notice } from "@/app/_ui/notice";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import type { SigningStanding } from "@/lib/views/signing-standing";

type Props = { readonly standing: SigningStanding };

/** Why this person cannot sign here and now, with the way out; null: they can. */
export function SigningObstacle({ standing }: Props) {
  if (standing.isAtBench)
    return (
      <Notice kind="info">
        A session at the bench records and does not sign. Sign in without “at the bench” to sign off.
      </Notice>
    );
  if (!standing.hasSecondFactor)
    return (
      <Notice kind="info">
        Signing needs one-time codes, and you have none yet.{" "}
        <Link href="/account/codes">Set them up at your account</Link>.
      </Notice>
    );
  if (standing.authorisations.length === 0)
    return (
      <Notice kind="info">
        You hold no authorisation to sign off that is in force. A quality manager grants authorisations at
        “Staff”.
      </Notice>
    );
  return null;
}

export const canSign = ({ isAtBench, hasSecondFactor, authorisations }: SigningStanding): boolean =>
  !isAtBench && hasSecondFactor && authorisations.length > 0;

/** The act of signing: what it means, whose name is printed, and what shows that it is them. */
export function SignatureFields({ standing }: Props) {
  const { continuedUntil } = standing;
  return (
    <FieldGroup legend="Your signature">
      <input type="hidden" name="actId" value={crypto.randomUUID()} />
      <p>
        <strong>“{standing.meaning}”</strong> This sentence, your name {standing.name} and the moment stand on
        each certificate.
      </p>
      <p className="field-hint">You are authorised for {standing.authorisations.join("; for ")}.</p>
      <p className="field-hint">
        {continuedUntil === null ? (
          <>
            The first signature of a session needs your password and a one-time code; within{" "}
            {standing.windowMinutes} minutes of each signature, one of the two is enough for the next.
          </>
        ) : (
          <>
            Until <Timestamp at={continuedUntil} precision="minute" /> your password or a one-time code is
            enough.
          </>
        )}
      </p>
      <TextField
        name="password"
        label="Your password"
        type="password"
        autoComplete="current-password"
        optional={continuedUntil !== null}
        maxLength={200}
      />
      <TextField
        name="secretCode"
        label="A one-time code"
        autoComplete="one-time-code"
        optional={continuedUntil !== null}
        maxLength={60}
      />
    </FieldGroup>
  );
}
