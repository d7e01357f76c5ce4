import { Button } from "@/app/_ui/button";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldFrame } from "@/app/_ui/field-frame";
import { labelLayoutNames, labelLayouts } from "@/lib/domain/sensor/label-layouts";

type Props = { readonly order: string; readonly tag?: string; readonly label: string };

/** A plain form to the label's address, in a tab of its own: printing is an event, so it is posted, not linked to. */
export function PrintLabels({ order, tag, label }: Props) {
  const id = `labels-${tag ?? order}`;
  return (
    <form action={`/api/labels/${order}`} method="post" target="_blank" rel="noopener">
      {tag ? <input type="hidden" name="tag" value={tag} /> : null}
      <Button type="submit">{label}</Button>
      <Disclosure summary="Roll or sheet">
        <FieldFrame id={`${id}-layout`} label="Printed on">
          <select id={`${id}-layout`} name="layout" className="input" defaultValue="roll-50x25">
            {labelLayoutNames.map((name) => (
              <option key={name} value={name}>
                {labelLayouts[name].name}
              </option>
            ))}
          </select>
        </FieldFrame>
        <FieldFrame id={`${id}-start`} label="First free label of the sheet">
          <input
            id={`${id}-start`}
            name="startAt"
            className="input"
            inputMode="numeric"
            autoComplete="off"
            defaultValue="1"
          />
        </FieldFrame>
      </Disclosure>
    </form>
  );
}
