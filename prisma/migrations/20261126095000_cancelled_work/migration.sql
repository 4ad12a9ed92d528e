-- Work that a person has stopped.
ALTER TABLE work_item DROP CONSTRAINT work_item_state_check;
ALTER TABLE work_item ADD CONSTRAINT work_item_state_check
  CHECK (state IN ('waiting', 'running', 'done', 'failed', 'cancelled'));
