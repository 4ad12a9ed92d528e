/**
 * Headers that say whose data a phone holds, or whose page a tab shows: ids of the person and the company. Nothing
 * passes for anybody else, and what is saved goes to the company of the page it was typed into.
 */
export const PERSON_HEADER = "x-dewledger-person";
export const COMPANY_HEADER = "x-dewledger-company";
