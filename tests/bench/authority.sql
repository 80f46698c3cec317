-- The standing of everybody for every item: the worst of its days. One row for each pair.
with stated as (
  -- What the person's own records give on a day, whatever the work; a suspension apart.
  select
    p.person,
    d.day,
    case
      when p.sixteen is null then 'unknown'
      when d.day >= p.eighteen then 'adult'
      when d.day >= p.sixteen then 'minor'
      else 'child'
    end as age,
    p.guardian,
    (
      select min(r.gives)
      from (values ('first-aid'), ('cpr')) as s (subject)
      cross join lateral (
        select case
          when bool_or(c.gives = 4 and d.day <= c.last) then 4
          when bool_or(c.gives = 1 and d.day <= c.last) then 1
          when count(*) > 0 then 0
          else 1
        end as gives
        from certificates c
        where c.person = p.person and c.subject = s.subject and c.first <= d.day
      ) r
    ) as certified
  from people p
  cross join (select distinct day from item_days) d
),
belongs as (
  -- The memberships of a day: those that have ended or not begun only where no other covers it.
  select
    m.*,
    d.day,
    coalesce(m.first <= d.day and d.day <= m.last, true) as is_current,
    bool_or(m.first <= d.day and d.day <= m.last or m.first is null and m.capacity = 'employee')
      over (partition by m.person, d.day) as is_covered
  from memberships m
  cross join (select distinct day from item_days) d
),
asked as (
  select distinct day, work_kind, book, places from item_days
),
own as materialized (
  select
    s.person,
    a.day,
    a.work_kind,
    a.book,
    a.places,
    case
      when s.age = 'child' then 0
      when exists (
        select
        from suspensions u
        where a.day between u.first and u.last
          and a.work_kind = any (coalesce(u.work_kinds, array['bucking', 'felling']))
          and (u.subject = 'person' and u.about = s.person::text or u.subject = 'place' and u.about = any (a.places))
      ) then 0
      else least(
        s.certified,
        case when s.age = 'unknown' then 1 else 4 end,
        coalesce(
          b.gives,
          case when s.age = 'minor' then case when a.work_kind = 'bucking' then 1 else 0 end else 4 end
        )
      )
    end as gives
  from asked a
  join stated s on s.day = a.day
  left join lateral (
    select min(
      case
        when m.capacity = 'contractor' and a.book = 'federal-crosscut' then 0
        when m.capacity not in ('employee', 'not-stated') and not coalesce(m.first <= a.day and a.day <= m.last, true)
          then 0
        when exists (
          select
          from suspensions u
          where u.subject = 'unit'
            and u.about = m.unit
            and a.day between u.first and u.last
            and a.work_kind = any (coalesce(u.work_kinds, array['bucking', 'felling']))
        ) then 0
        else least(
          case when m.capacity not in ('employee', 'not-stated') and m.first is null then 1 else 4 end,
          case
            when s.age <> 'minor' then 4
            when a.work_kind = 'felling' then 0
            when m.capacity = 'not-stated' then 1
            when m.capacity <> 'volunteer' then 0
            when s.guardian = 'given' then 3
            when s.guardian = 'refused' then 0
            else 1
          end
        )
      end
    ) as gives
    from belongs m
    where m.person = s.person and m.day = s.day and (m.is_current or not m.is_covered)
  ) b on true
),
held as (
  -- What each card gives on each day of each item on which it counts.
  select
    c.person,
    i.item,
    i.day,
    least(
      case
        when i.planned is not null then g.gives[i.planned + 1]
        when 0 < any (g.gives) then 1
        else 0
      end,
      case when c.kinds_stated or i.work_kind = 'bucking' then 4 else 1 end,
      coalesce(r.gives, 4),
      case
        when exists (
          select
          from suspensions u
          where u.subject = 'card'
            and u.about = c.number
            and i.day between u.first and u.last
            and i.work_kind = any (coalesce(u.work_kinds, array['bucking', 'felling']))
        ) then 0
        else 4
      end
    ) as gives
  from cards c
  join item_days i on i.day between c.first and c.last and i.work_kind = any (c.work_kind)
  join grants g
    on g.governing = i.book and g.card_book = c.book and g.level = c.level and g.work_kind = i.work_kind
  left join lateral (
    select min(
      case r.kind
        when 'greatest-diameter' then case when i.diameter <= r.inches then 4 else 0 end
        when 'places' then case when i.places && r.allowed then 4 else 0 end
        when 'species' then case when i.species is null then 1 when i.species = any (r.allowed) then 4 else 0 end
        when 'greatest-complexity' then case when coalesce(i.planned <= r.complexity, true) then 4 else 0 end
        when 'double-bucking-only' then case when i.work_kind <> 'bucking' or i.hands = 'two' then 4 else 0 end
        when 'no-felling' then case when i.work_kind = 'felling' then 0 else 4 end
        when 'supervisor-only' then 3
        else 1
      end
    ) as gives
    from restrictions r
    where r.card = c.card and i.work_kind = any (coalesce(r.work_kinds, array['bucking', 'felling']))
  ) r on true
),
best as (
  select person, item, day, max(gives) as gives from held group by person, item, day
)
select o.person, i.item, min(least(o.gives, coalesce(b.gives, 0)))::smallint as rank
from item_days i
join own o
  on o.day = i.day and o.work_kind = i.work_kind and o.book = i.book and o.places = i.places
left join best b on b.person = o.person and b.item = i.item and b.day = i.day
group by o.person, i.item
order by o.person, i.item
