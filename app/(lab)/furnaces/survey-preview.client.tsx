"use client";
import { useEffect, useRef, useState } from "react";
import type { CharacterisationPlan } from "@/lib/domain/furnace/characterisation-plan";
import { evaluateSurvey, type SurveyEvaluation } from "@/lib/domain/furnace/evaluate-survey";
import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import type { BoreView } from "@/lib/drawing/load-view";
import { parseSurvey } from "./parse-survey";
import { SurveyFacts } from "./survey-facts";
import { SurveyFigure } from "./survey-figure";

type Props = {
  readonly plan: CharacterisationPlan;
  readonly celsius: number;
  readonly kind: SurveyKind;
  readonly bores: readonly BoreView[];
  readonly boreMillimetre: number;
};

type Seen =
  | { readonly kind: "found"; readonly readings: SurveyReadings; readonly evaluation: SurveyEvaluation }
  | { readonly kind: "waiting"; readonly say: string };

const look = (form: HTMLFormElement, { plan, celsius, kind }: Props): Seen => {
  const read = SurveyReadings.safeParse(parseSurvey(new FormData(form), kind));
  if (!read.success) return { kind: "waiting", say: "The picture comes once every line begun is filled in." };
  const found = evaluateSurvey(plan, celsius, read.data);
  if (found.ok) return { kind: "found", readings: read.data, evaluation: found.value };
  const [first] = Object.values(found.refusal.fields ?? {});
  return { kind: "waiting", say: first ?? found.refusal.message };
};

/** The survey evaluated and drawn while it is typed: by the same code that judges it when it is recorded. */
export function SurveyPreview(props: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const [seen, setSeen] = useState<Seen>({ kind: "waiting", say: "Nothing is typed yet." });
  const { plan, celsius, kind } = props;

  useEffect(() => {
    const form = frame.current?.closest("form");
    if (!form) return;
    const read = () => setSeen(look(form, { plan, celsius, kind, bores: [], boreMillimetre: 1 }));
    form.addEventListener("input", read);
    form.addEventListener("change", read);
    return () => {
      form.removeEventListener("input", read);
      form.removeEventListener("change", read);
    };
  }, [plan, celsius, kind]);

  return (
    <div ref={frame}>
      {seen.kind === "found" ? (
        <>
          <SurveyFigure {...props} readings={seen.readings} evaluation={seen.evaluation} />
          <SurveyFacts evaluation={seen.evaluation} />
        </>
      ) : (
        <p className="quiet" role="status">
          {seen.say}
        </p>
      )}
    </div>
  );
}
