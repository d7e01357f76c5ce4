import type { StabilityWait } from "@/lib/domain/evidence/await-stability";
import css from "../../runs.module.css";
import { waitWords } from "../../wait-words";

/** At the furnace: how long still, in words to be read from a few steps away, and what is missing. */
export function SetpointWait({ wait }: { readonly wait: StabilityWait }) {
  const { headline, interval } = waitWords(wait);
  return (
    <>
      <div className={css.far}>
        <div>
          <span className={css.figure}>{headline}</span>
          <span className={css.label}>{interval}</span>
        </div>
      </div>
      <p>Still missing in the last {(wait.latest.lengthSeconds / 60).toFixed(1)} min:</p>
      <ul>
        {wait.latest.reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </>
  );
}
