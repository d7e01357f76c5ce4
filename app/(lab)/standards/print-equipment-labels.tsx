import { Button } from "@/app/_ui/button";

type Props = { readonly ids: readonly string[]; readonly label: string };

/** A plain form, in a tab of its own: printing is an event, so it is posted, not linked to. */
export function PrintEquipmentLabels({ ids, label }: Props) {
  return (
    <form action="/api/equipment-labels" method="post" target="_blank" rel="noopener">
      {ids.map((id) => (
        <input key={id} type="hidden" name="id" value={id} />
      ))}
      <Button type="submit">{label}</Button>
    </form>
  );
}
