"use client";
import { useEffect, useRef, useState } from "react";
import type { TypedCapability } from "@/lib/domain/order/capability";
import { ExpectedStatements } from "../[number]/expected-statements";
import { answerCapability } from "./actions";

const PAUSE_MILLISECONDS = 500;
const rule = /^(lines\.\d+\..*|decisionRule|guardBandRatio|falseAcceptancePercent)$/;
/** What a point's answer cannot depend on. */
const idle = /\.(construction|quantity|groupName|siteAddress|lineId)$/;

const askedOf = (form: HTMLFormElement): FormData => {
  const asked = new FormData();
  for (const [name, value] of new FormData(form))
    if (rule.test(name) && !idle.test(name) && typeof value === "string") asked.append(name, value);
  return asked;
};

/**
 * The platform answers while lines are typed: can it be done, in scope, with what U, and could the class be decided.
 * Without JavaScript the same table stands on the order's page once it is recorded.
 */
export function CapabilityAnswers() {
  const frame = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState<TypedCapability>({ answers: [], summary: "" });
  useEffect(() => {
    const form = frame.current?.closest("form");
    if (!form) return;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let last = "";
    const ask = async () => {
      const data = askedOf(form);
      const key = JSON.stringify([...data]);
      if (key === last) return;
      last = key;
      const answer = await answerCapability(data).catch(() => null);
      // What was typed meanwhile has been asked for itself.
      if (answer && key === last) setSaid(answer);
    };
    const later = () => {
      clearTimeout(timer);
      timer = setTimeout(ask, PAUSE_MILLISECONDS);
    };
    // A click may add a line or take one away.
    const events = ["input", "change", "click"] as const;
    for (const event of events) form.addEventListener(event, later);
    later();
    return () => {
      clearTimeout(timer);
      for (const event of events) form.removeEventListener(event, later);
    };
  }, []);
  return (
    <div ref={frame} className="stack">
      <p role="status" className="field-hint">
        {said.summary}
      </p>
      <ExpectedStatements points={said.answers} />
    </div>
  );
}
