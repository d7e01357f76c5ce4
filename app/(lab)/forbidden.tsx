import { DeadEnd } from "@/app/_ui/dead-end";

export const metadata = { title: "Not permitted" };

/** Within the house, which has its head already. */
export default function Forbidden() {
  return <DeadEnd kind="not-permitted" />;
}
