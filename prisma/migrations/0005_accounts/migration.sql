-- Why an account is as it is, why a role was given or shortened, and why one was ended at once.
ALTER TABLE "account_fact" ADD COLUMN "because" TEXT;
ALTER TABLE "account_role_fact" ADD COLUMN "because" TEXT, ADD COLUMN "ended_because" TEXT;

CREATE INDEX "link_account_id_idx" ON "desk"."link"("account_id");

-- From here on by hand.

-- A link to set a password is somebody's; the one to begin with is nobody's yet.
ALTER TABLE "desk"."link" ADD CONSTRAINT link_names_its_account CHECK ((purpose = 'password') = (account_id IS NOT NULL));
