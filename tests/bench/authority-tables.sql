-- The facts of a program as a careful schema would hold them. Resolved beforehand, in favour of the query: the last day
-- of a card with its endings, what a certificate gives on the days it covers, lifts taken off suspensions, the words of
-- restrictions, recognition between books, and of each item on each day the governing book and the planned complexity.
-- Ranks: 0 none, 1 unknown, 2 training, 3 own level, 4 independent.
create table people (
  person int primary key,
  sixteen date,
  eighteen date,
  guardian text
);
create table memberships (
  person int not null references people,
  capacity text not null,
  unit text,
  first date,
  last date
);
create table certificates (
  person int not null references people,
  subject text not null,
  first date not null,
  last date not null,
  gives smallint not null
);
create table cards (
  card int primary key,
  person int not null references people,
  number text not null,
  book text not null,
  level text not null,
  kinds_stated boolean not null,
  work_kind text[] not null,
  first date not null,
  last date not null
);
create table restrictions (
  card int not null references cards,
  kind text not null,
  work_kinds text[],
  inches numeric,
  complexity smallint,
  allowed text[]
);
create table suspensions (
  subject text not null,
  about text not null,
  work_kinds text[],
  first date not null,
  last date not null
);
create table grants (
  governing text not null,
  card_book text not null,
  level text not null,
  work_kind text not null,
  gives smallint[] not null,
  primary key (governing, card_book, level, work_kind)
);
create table item_days (
  item int not null,
  day date not null,
  work_kind text not null,
  diameter numeric not null,
  hands text,
  species text,
  places text[] not null,
  book text not null,
  planned smallint,
  primary key (item, day)
);
create index on memberships (person);
create index on certificates (person, subject, first, last);
create index on cards (person, first, last);
create index on restrictions (card);
create index on suspensions (subject, about, first, last);
create index on item_days (day);
