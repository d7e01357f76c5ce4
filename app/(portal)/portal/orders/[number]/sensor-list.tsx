import Link from "next/link";
import { Disclosure } from "@/app/_ui/disclosure";
import { EndedNote } from "@/app/_ui/ended-note";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { customerPartsView } from "@/lib/views/order/parts";
import type { PortalOrder } from "@/lib/views/portal-orders";
import { DocumentLinks } from "../../document-links";
import { ExternalResult } from "../../external-result";

type Parts = Awaited<ReturnType<typeof customerPartsView>>;

/** Where one sensor stands at each temperature; as received and after annealing apart. */
function AtEach({
  tag,
  serial,
  parts,
}: {
  readonly tag: string;
  readonly serial: string;
  readonly parts: Parts;
}) {
  const line = parts.find(({ sensors }) => sensors.some((sensor) => sensor.tag === tag));
  const rows = line?.sensors.find((sensor) => sensor.tag === tag)?.rows ?? [];
  if (!line || line.setpoints.length === 0 || rows.length === 0) return null;
  return (
    <Disclosure summary={`${serial} at each temperature`}>
      {rows.map((row) => (
        <div key={row.label}>
          {row.label ? <h4>{row.label}</h4> : null}
          <ul className="plain-list">
            {row.cells.map((cell, index) => (
              <li key={line.setpoints[index]}>
                {line.setpoints[index]}: {cell.label}
              </li>
            ))}
          </ul>
        </div>
      ))}
    </Disclosure>
  );
}

type Props = { readonly sensors: PortalOrder["sensors"]; readonly parts: Parts };

/** Where each sensor is, in plain words, with its certificates. */
export function SensorList({ sensors, parts }: Props) {
  if (sensors.length === 0) return <p>None has reached us yet.</p>;
  return (
    <ul className="stack plain-list">
      {sensors.map((sensor) => (
        <li key={sensor.tag}>
          <strong>
            <Link href={`/portal/sensors/${encodeURIComponent(sensor.serial)}`}>{sensor.serial}</Link>
          </strong>{" "}
          <TypeLetter letter={sensor.typeLetter} /> <span className="quiet">our label {sensor.tag}</span>
          <br />
          {sensor.where}.{sensor.remark ? ` Found on arrival: ${sensor.remark}.` : ""}
          {sensor.certificates.map((certificate) => (
            <span key={certificate.number}>
              {" "}
              <EndedNote number={certificate.number} standing={certificate.standing} />
              <DocumentLinks certificate={certificate} />.
            </span>
          ))}
          {sensor.external ? <ExternalResult external={sensor.external} /> : null}
          <AtEach tag={sensor.tag} serial={sensor.serial} parts={parts} />
        </li>
      ))}
    </ul>
  );
}
