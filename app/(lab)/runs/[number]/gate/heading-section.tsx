import { Disclosure } from "@/app/_ui/disclosure";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { gateHeadingLabels } from "@/lib/domain/gate/headings";
import { saidOf } from "@/lib/domain/gate/subject-words";
import type { RunGateView } from "@/lib/views/run/run-gate";
import { gateMark } from "./gate-marks";
import { ReasonForm } from "./reason-form";

type Heading = RunGateView["headings"][number];
type Row = Heading["rows"][number];
type Props = { readonly run: string; readonly heading: Heading };

const keyOf = (row: Row): string => [row.code, row.reason, ...row.subjects].join(" ");

const isOpen = ({ severity, given }: Row): boolean => severity === "overridable" && given === null;

/** What it rests on, who else could set it aside, and how it was last time. */
const Small = ({ row }: { readonly row: Row }) => (
  <p className="quiet">
    Source: {row.source}.
    {isOpen(row) && row.override && !row.override.mayI ? (
      <>
        {" "}
        <span>Only {row.override.by} may set this aside.</span>
      </>
    ) : null}
  </p>
);

const AsLastTime = ({ row }: { readonly row: Row }) =>
  isOpen(row) && row.asLastTime ? (
    <p>
      <StateMark state="waiting" label="As last time" tone="rest" /> Run {row.asLastTime.run} was let through
      with “{row.asLastTime.reason}”
    </p>
  ) : null;

const Said = ({ row }: { readonly row: Row }) => (
  <div>
    <p>
      <StateMark {...gateMark(row.severity, row.given)} /> {saidOf(row.code, row.subjects, row.reason)}{" "}
      {row.given === null ? row.remedy : `Set aside: “${row.given}”`}
    </p>
    <AsLastTime row={row} />
    <Small row={row} />
  </div>
);

/** One of the headings: what is wrong first, with its reason form; what is met one step further down. */
export function HeadingSection({ run, heading }: Props) {
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
          {isOpen(row) ? <ReasonForm run={run} row={row} /> : null}
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
