import Link from "next/link";
import { Timestamp } from "@/app/_ui/timestamp";
import type { ConfigurationView } from "@/lib/views/furnace";
import { decideCharacterisationAction } from "./actions";
import { DecisionForm } from "./decision-form";
import { DecisionMark } from "./decision-mark";
import { FiguresTable } from "./figures-table";

type Characterisation = ConfigurationView["characterisations"][number];
type Props = { readonly furnaceId: string; readonly configuration: ConfigurationView };

function OneCharacterisation({
  furnaceId,
  one,
  counts,
}: {
  readonly furnaceId: string;
  readonly one: Characterisation;
  readonly counts: boolean;
}) {
  return (
    <li>
      <p className="row">
        <strong>
          Measured <Timestamp at={one.performedOn} precision="day" />
        </strong>
        <DecisionMark state={one.state} />
        <span>
          holds until <Timestamp at={one.validUntil} precision="day" />
        </span>
        {counts ? <span className="quiet">what runs use now</span> : null}
        {one.characterisationRunId ? (
          <Link href={`/furnaces/${furnaceId}/characterisations/${one.characterisationRunId}`}>
            Its surveys
          </Link>
        ) : (
          <span className="quiet">typed, one figure for all</span>
        )}
      </p>
      {one.figures ? (
        <FiguresTable figures={one.figures} />
      ) : (
        <p>
          ± {one.uniformityHalfWidthCelsius} °C: {one.statement}
        </p>
      )}
      {one.reason ? <p className="quiet">{one.reason}</p> : null}
      {one.mayDecide ? (
        <DecisionForm
          id={one.id}
          action={decideCharacterisationAction}
          what={`the characterisation of ${one.performedOn}`}
          acceptHint="Runs made from now on rest on it, until its last day."
        />
      ) : null}
    </li>
  );
}

/** Newest first. None is ever changed: another one follows it. */
export function CharacterisationList({ furnaceId, configuration }: Props) {
  const { characterisations, countingId } = configuration;
  if (characterisations.length === 0)
    return <p className="quiet">Not characterised yet: no run can be made in it.</p>;
  return (
    <ul className="list">
      {characterisations.map((one) => (
        <OneCharacterisation key={one.id} furnaceId={furnaceId} one={one} counts={one.id === countingId} />
      ))}
    </ul>
  );
}
