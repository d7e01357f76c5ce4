import { ChoiceCell, TextCell } from "@/app/_ui/cell-fields.client";
import { FieldError } from "@/app/_ui/field-error.client";
import { TypeLetter } from "@/app/_ui/type-letter";
import type { NewRunView } from "@/lib/views/run/new-run";
import css from "../runs.module.css";
import type { PlaceRow } from "./place-rows";

type Props = {
  readonly rows: readonly PlaceRow[];
  readonly junctions: NewRunView["junctions"];
  readonly leads: NewRunView["leads"];
  readonly immersionMillimetre: number | undefined;
};

type LeadProps = { readonly name: string; readonly row: PlaceRow; readonly leads: NewRunView["leads"] };

/** Only for a sensor, and only leads of its type; none: its own goes to the junction. */
function LeadCell({ name, row, leads }: LeadProps) {
  const fit = leads.filter(({ type }) => type === row.type);
  if (row.kind !== "sensor" || fit.length === 0) return null;
  return (
    <ChoiceCell
      name={name}
      label={`Lead of ${row.tag}`}
      choices={[{ value: "", label: "its own" }, ...fit.map(({ id, tag }) => ({ value: id, label: tag }))]}
    />
  );
}

/** The furnace load as a table of fields, in the order of the keyboard. */
export function PlaceTable({ rows, junctions, leads, immersionMillimetre }: Props) {
  const choices = junctions.map(({ id, tag, celsius }) => ({
    value: id,
    label: `${tag} (${celsius ?? 0} °C)`,
  }));
  return (
    <div className={css.scrolls}>
      <table className={css.grid}>
        <caption className="unseen">Place, channel, junction and immersion of each</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Place</th>
            <th scope="col">Channel</th>
            <th scope="col">Junction</th>
            <th scope="col">Junction at, °C</th>
            {leads.length > 0 ? <th scope="col">Lead of ours</th> : null}
            <th scope="col">Immersion, mm</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => {
            const at = `places.${index}`;
            const name = row.tag || "shorted channel";
            return (
              <tr key={row.key} id={`place-${index}`}>
                <th scope="row">
                  <input type="hidden" name={`${at}.kind`} value={row.kind} />
                  <input type="hidden" name={`${at}.tag`} value={row.tag} />
                  {row.tag} {row.type ? <TypeLetter letter={row.type} /> : null}{" "}
                  <span className="quiet">{row.note}</span>
                  <FieldError name={`${at}.item`} />
                </th>
                <td>
                  <TextCell name={`${at}.place`} label={`Place of ${name}`} defaultValue={row.place} />
                </td>
                <td>
                  <TextCell name={`${at}.channel`} label={`Channel of ${name}`} defaultValue={row.channel} />
                </td>
                <td>
                  <ChoiceCell name={`${at}.junctionId`} label={`Junction of ${name}`} choices={choices} />
                </td>
                <td>
                  <TextCell
                    name={`${at}.junctionCelsius`}
                    label={`Junction temperature of ${name}, °C`}
                    defaultValue={junctions[0]?.celsius ?? ""}
                    isNumber
                  />
                </td>
                {leads.length > 0 ? (
                  <td>
                    <LeadCell name={`${at}.leadId`} row={row} leads={leads} />
                  </td>
                ) : null}
                <td>
                  {row.kind === "shorted" ? null : (
                    <TextCell
                      name={`${at}.immersionMillimetre`}
                      label={`Immersion of ${name}, mm`}
                      defaultValue={immersionMillimetre}
                      isNumber
                    />
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
