import type { OrderReturnAddress } from "@/lib/views/order/return-address";

/** Where the sensors go back to, by its name in the customer's address book and in full. */
export const ReturnAddressLine = ({ to }: { readonly to: OrderReturnAddress }) => (
  <>
    {to.title}: {to.address.replaceAll("\n", ", ")}
    {to.givenUp === "" ? null : (
      <span className="quiet"> The order names “{to.givenUp}”, which the customer uses no more.</span>
    )}
  </>
);
