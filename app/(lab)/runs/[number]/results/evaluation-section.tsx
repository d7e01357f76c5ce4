import { Hash } from "@/app/_ui/hash";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { RunResultsView } from "@/lib/views/run/run-results";
import { ResultTable } from "./result-table";

/** The last evaluation with who made it, by which engine, over which inputs. */
export function EvaluationSection({ view }: { readonly view: RunResultsView }) {
  const { evaluation } = view;
  if (!evaluation) return null;
  const { sequence, evaluatedBy, evaluatedAt, engineVersion, inputsDigest } = evaluation;
  return (
    <Section
      title={`Evaluation ${sequence}`}
      note={
        <>
          By {evaluatedBy}, <Timestamp at={evaluatedAt} />. Engine {engineVersion}, inputs{" "}
          <Hash value={inputsDigest} label="Digest of the inputs" />
        </>
      }
      wide
    >
      <ResultTable view={view} />
    </Section>
  );
}
