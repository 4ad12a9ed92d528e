declare const idOf: unique symbol;

/** A UUID that knows which entity it names, so that a job's id cannot be passed for a customer's. */
export type Id<Entity extends string> = string & { readonly [idOf]: Entity };

export type TenantId = Id<"tenant">;
export type UserId = Id<"user">;
export type MembershipId = Id<"membership">;
export type InvitationId = Id<"invitation">;
export type CustomerId = Id<"customer">;
export type HomeId = Id<"home">;
export type JobId = Id<"job">;
export type StageRecordId = Id<"stage record">;
export type EquipmentModelId = Id<"equipment model">;
export type ControlModelId = Id<"control model">;
export type InstrumentId = Id<"instrument">;
export type LogSourceId = Id<"log source">;
export type LogImportId = Id<"log import">;
export type CallbackId = Id<"callback">;
export type AttachmentId = Id<"attachment">;
export type PacketId = Id<"packet">;
export type ActivityId = Id<"activity">;
export type SavedViewId = Id<"saved view">;
export type OptionId = Id<"option">;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** True for a well-formed UUID. Anything else is treated as an id that does not exist. */
export function isUuid(text: string): boolean {
  return UUID.test(text);
}

/** Brands a string that is known to be an id, for instance one read from the database. */
export function asId<Entity extends string>(text: string): Id<Entity> {
  return text.toLowerCase() as Id<Entity>;
}
