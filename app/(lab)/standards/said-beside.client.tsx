"use client";
import { type ReactNode, useEffect, useRef, useState } from "react";
import { useFormState } from "@/app/_ui/form-context.client";
import { StateMark } from "@/app/_ui/state-mark";
import { TextField } from "@/app/_ui/text-field.client";
import type { Said } from "@/lib/domain/calibration/dcc-says";
import { parseDecimal } from "@/lib/web/form-fields";
import css from "./calibrations.module.css";

type Props = {
  /** What the file says for the fields within; empty: it says nothing, and they stand alone. */
  readonly said: readonly Said[];
  /** Name of the reason that a differing value asks for. */
  readonly reason: string;
  /** For a table of fields, whose places stand in its cells. */
  readonly isTable?: boolean;
  readonly children: ReactNode;
};

const inLine = (text: string): string => text.replaceAll(/\s+/g, " ").trim();

const isSame = ({ value }: Said, typed: string): boolean =>
  typeof value === "number" ? parseDecimal(typed) === value : inLine(value) === inLine(typed);

const differing = (box: HTMLElement | null, said: readonly Said[]): number =>
  said.filter((one) => {
    const field = box?.querySelector<HTMLInputElement>(`[name="${one.field}"]`);
    return field ? !isSame(one, field.value) : false;
  }).length;

/** Place and value as the file has them, in words that fit one line. */
export function SaidPlace({ said }: { readonly said: Said }) {
  const { written, how, place } = said;
  return (
    <>
      <span className={css.said}>In the file: {written}</span>
      {how ? <span className={css.how}>{how}</span> : null}
      <details className={css.place}>
        <summary>{place.line > 0 ? `Line ${place.line}` : "Where"}</summary>
        <code>{place.path}</code>
      </details>
    </>
  );
}

/**
 * Fields with what the digital certificate says laid beside them. A value that is not the file's is marked while it is
 * typed and asks for a reason; the server holds both against the file again.
 */
export function SaidBeside({ said, reason, isTable, children }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const state = useFormState();
  const [count, setCount] = useState(0);
  // Without script the reason is always asked for, since nothing could show it later.
  const [isScripted, setScripted] = useState(false);
  useEffect(() => {
    setScripted(true);
    if (state.status !== "done") setCount(differing(box.current, said));
  }, [said, state]);
  if (said.length === 0) return children;
  const isAsked = count > 0 || !isScripted;
  return (
    <div
      ref={box}
      className={isTable ? css.table : css.beside}
      onInput={() => setCount(differing(box.current, said))}
    >
      <div>{children}</div>
      <div className={css.file}>
        {isTable ? null : said.map((one) => <SaidPlace key={one.field} said={one} />)}
        {count > 0 ? (
          <StateMark
            state="exception"
            label={count === 1 ? "Differs from the file" : `${count} values differ from the file`}
          />
        ) : null}
        <div hidden={!isAsked}>
          <TextField name={`reasons.${reason}`} label="Why it differs" optional />
        </div>
      </div>
    </div>
  );
}
