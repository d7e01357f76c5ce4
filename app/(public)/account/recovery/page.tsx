import { redirect } from "next/navigation";
import { z } from "zod";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { currentActor } from "@/lib/web/auth";
import { readSealed } from "@/lib/web/sealed-cookie";
import { forgetRecoveryAction } from "../actions";
import styles from "../codes/codes.module.css";

export const metadata = { title: "Recovery codes" };

const Codes = z.object({ codes: z.array(z.string()) });

/** Shown once, right after they were made, and for ten minutes at most: only their hashes are stored. */
export default async function RecoveryPage() {
  const actor = await currentActor();
  if (!actor || actor.kind === "system") redirect("/sign-in");
  const made = await readSealed("recovery", Codes);
  if (!made) redirect("/account?said=codes-kept");
  return (
    <Page
      title="Recovery codes"
      lead="One-time codes are set up. If the device is lost, each of these opens your account once, instead of a code."
    >
      <Notice kind="caution">
        Write them down or print them now: they are not shown again. Keep them away from the device.
      </Notice>
      <ul className={styles.codes} aria-label="Recovery codes">
        {made.codes.map((code) => (
          <li key={code}>{code}</li>
        ))}
      </ul>
      <form action={forgetRecoveryAction} className="form">
        <div className="form-actions">
          <SubmitButton>I have kept them</SubmitButton>
        </div>
      </form>
    </Page>
  );
}
