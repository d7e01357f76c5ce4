import { Refused } from "@/lib/domain/refusal";
import { Prisma } from "@/lib/generated/prisma/client";

/** The database's unique constraint, said at its field. The transaction is over by then: the refusal rolls it back. */
export const refuseDuplicate = async <T>(write: Promise<T>, field: string, message: string): Promise<T> => {
  try {
    return await write;
  } catch (error) {
    if (error instanceof Prisma.PrismaClientKnownRequestError && error.code === "P2002")
      throw new Refused({
        code: "invalid",
        message: "Nothing was stored; what you typed is still here.",
        fields: { [field]: message },
      });
    throw error;
  }
};
