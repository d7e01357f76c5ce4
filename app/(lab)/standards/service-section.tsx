import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { Equipment } from "@/lib/domain/equipment/types";
import type { EquipmentServiceView } from "@/lib/views/equipment-service";
import { gapsInWords } from "./record-items";
import { StateForm } from "./state-form";

type Props = { readonly equipment: Equipment; readonly service: EquipmentServiceView };

/** Runs that were made since the last thing that spoke for it, ISO/IEC 17025 6.4.9. */
function Doubt({
  equipment,
  doubt,
}: {
  readonly equipment: Equipment;
  readonly doubt: NonNullable<EquipmentServiceView["doubt"]>;
}) {
  const since = doubt.since === null ? "ever" : `since ${doubt.since}, the last day that spoke for it`;
  return (
    <Notice kind="caution" title="Caution: in doubt">
      {doubt.runs.length === 0 ? (
        <>No run was made with it {since}.</>
      ) : (
        <>
          Made with it {since}:{" "}
          {doubt.runs.map(({ number, state, on }, index) => (
            <span key={number}>
              {index > 0 ? ", " : ""}
              <Link href={`/runs/${number}`}>{number}</Link> ({on}, {state.replace("-", " ")})
            </span>
          ))}
          . Find out what that does to each of them.
        </>
      )}{" "}
      <Link href={`/trace/standard/${equipment.id}`}>All results that stand on it</Link>
    </Notice>
  );
}

/** May it be used, what is missing, and its next step. */
export function ServiceSection({ equipment, service }: Props) {
  const { findings, gaps, verified, doubt, nextStates, mayWrite } = service;
  const isUnverified = !verified && equipment.state !== "retired" && equipment.state !== "in-service";
  return (
    <Section title="Service" note="Received, verified, in service: no step is left out.">
      {doubt ? <Doubt equipment={equipment} doubt={doubt} /> : null}
      <ul className="plain-list">
        {findings.length === 0 ? (
          <li>
            <StateMark state="done" label="Nothing in its logbook stands against its use" />
          </li>
        ) : null}
        {findings.map(({ ground, message, blocks }) => (
          <li key={ground}>
            <StateMark state={blocks ? "out-of-date" : "due"} label={blocks ? "Blocks" : "Warns"} /> {message}
          </li>
        ))}
        {isUnverified ? (
          <li>
            <StateMark state="waiting" label="To do" /> Verify it against what was asked of it, and write that
            into the logbook.
          </li>
        ) : null}
        {gaps.length > 0 ? (
          <li>
            <StateMark state="waiting" label="To do" /> Its record does not say {gapsInWords(gaps)}.
          </li>
        ) : null}
      </ul>
      {mayWrite && nextStates.length > 0 ? <StateForm equipment={equipment} states={nextStates} /> : null}
    </Section>
  );
}
