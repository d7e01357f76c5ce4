import { BareShell } from "@/app/_ui/bare-shell";
import { DeadEnd } from "@/app/_ui/dead-end";

export const metadata = { title: "Not permitted" };

export default function Forbidden() {
  return (
    <BareShell>
      <DeadEnd kind="not-permitted" />
    </BareShell>
  );
}
