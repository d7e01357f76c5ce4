import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { gateHeadingLabels } from "@/lib/domain/gate/headings";
import type { RunGateView } from "@/lib/views/run/run-gate";
import { gateMark } from "./gate-marks";
import { ReasonForm } from "./reason-form";

type Heading = RunGateView["headings"][number];
type Row = Heading["rows"][number];
type Props = { readonly run: string; readonly heading: Heading; readonly mayWork: boolean };

const keyOf = (row: Row): string => [row.code, row.reason, ...row.subjects].join(" ");

const Said = ({ row }: { readonly row: Row }) => (
  <>
    <p>
      <StateMark {...gateMark(row.severity, row.given)} />{" "}
      {row.subjects.length > 0 ? <strong>{row.subjects.join(", ")}: </strong> : null}
      {row.reason} {row.given === null ? row.remedy : null}
    </p>
    {row.given === null ? null : <p>Set aside: “{row.given}”</p>}
    <p className="quiet">
      Source: {row.source}.
      {row.asLastTime
        ? ` As last time: run ${row.asLastTime.run} was let through with “${row.asLastTime.reason}”`
        : ""}
    </p>
  </>
);

/** One of the headings: what is wrong first, with its reason form; what is met one step further down. */
export function HeadingSection({ run, heading, mayWork }: Props) {
  const said = heading.rows.filter(({ severity }) => severity !== "ok");
  const met = heading.rows.filter(({ severity }) => severity === "ok");
  return (
    <Section
      title={gateHeadingLabels[heading.heading]}
      note={<StateMark {...gateMark(heading.severity)} />}
      id={heading.heading}
    >
      {said.map((row) => (
        <article className="stack" key={keyOf(row)}>
          <Said row={row} />
          {mayWork && row.severity === "overridable" && row.given === null ? (
            <ReasonForm run={run} row={row} />
          ) : null}
        </article>
      ))}
      {met.length > 0 ? (
        <Disclosure summary={`${met.length} met`}>
          <ul className="list">
            {met.map(({ code, reason, source }) => (
              <li key={code}>
                {reason} <span className="quiet">{source}</span>
              </li>
            ))}
          </ul>
        </Disclosure>
      ) : null}
    </Section>
  );
}
