import { Button } from "@/app/_ui/button";
import { Disclosure } from "@/app/_ui/disclosure";
import { LabelSheet } from "./label-sheet.client";

type Props = { readonly order: string; readonly tag?: string; readonly label: string };

/** A plain form to the label's address, in a tab of its own: printing is an event, so it is posted, not linked to. */
export function PrintLabels({ order, tag, label }: Props) {
  return (
    <form action={`/api/labels/${order}`} method="post" target="_blank" rel="noopener">
      {tag ? <input type="hidden" name="tag" value={tag} /> : null}
      <Button type="submit">{label}</Button>
      <Disclosure summary="Roll or sheet">
        <LabelSheet id={`labels-${tag ?? order}`} />
      </Disclosure>
    </form>
  );
}
