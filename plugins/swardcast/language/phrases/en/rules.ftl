### The part "The Rules" of a notice. A notice says only what the Committee adopted, by number, and a few facts of
### the Rules of Golf (2019, as changed in 2023) that hold on every course. These are summaries: the current official
### text decides. Only the club's own words say anything about scores and handicap. A rule named here is not in force
### unless it was adopted.

rules-none = No Local Rule is in force for this: play the ball as it lies.
# While one holds on the whole course: .said where rules-on-the-course follows
rules-none-of-its-own = No Local Rule is in force for this work alone. One holds on the whole course: see the course status.
    .said = No Local Rule is in force for this work alone.
# Nobody has entered anything for more than a week, so one may hold that is not here
rules-none-known = No Local Rule is known here, and our last report is from { $day }. Ask the club, or look at its notice board.

# Rule 13.1f; Model Local Rule D-2 would name the temporary green: Committee Procedures 8D.
rules-none-temporary-green = No Local Rule on the temporary green is known here. Ask the club how it is played: the usual green may be a wrong green (Rule 13.1f).

# No relief is invented: who finds the work in the way is sent to those who decide.
rules-ask-first = If the work may lie in your way, ask the club before you set out.

# Committee Procedures 8: a Local Rule is the Committee's to make.
rules-committee = Only the Committee can make a Local Rule; { -greenkeepers } cannot.

# Fluent cannot ask whether words are missing, so each thing that may be missing is an attribute: use it when it is
# there. $number of the Model Local Rule; $by who adopted it, as typed; $from and $until days in words; $says the
# club's typed words.
rules-in-force =
    .no-dates = Model Local Rule { $number } was adopted by { $by }; no dates are given for it.
    .from = Model Local Rule { $number }, adopted by { $by }, holds from { $from } on.
    .until = Model Local Rule { $number }, adopted by { $by }, holds up to { $until }.
    .from-until = Model Local Rule { $number }, adopted by { $by }, holds from { $from } to { $until }.
    .says = In the club's own words: { $says }

# It ends before the last surface is worked on, or before the day on which all is expected back to normal. $by who decides, as typed.
rules-ends-before-work = The rule ends on { $day }, before the work is expected to be finished. It is for { $by } to decide whether to go on with it.
rules-ends-before-normal = The rule ends on { $day }, before all is expected back to normal. It is for { $by } to decide whether to go on with it.

# Duty to make Local Rules known in full: Committee Procedures 8 (The R&A and USGA, 2019).
rules-full-text = The full text that the Committee has posted counts, not this summary.

# Heads the club's own typed words; nothing is added to them.
rules-handicap-own = What the club says about scores and handicap:

## Facts that hold without a Local Rule

# Definition of ground under repair (2023): holes made in maintaining the course, "but not aeration holes".
rules-fact-aeration-holes = Aeration holes let air into the turf. They are not ground under repair: only a Local Rule can give you free relief from them.

# Definition of ground under repair (2023).
rules-fact-maintenance-holes = A hole or trench that we dig in our work is ground under repair, even without marks. Aeration holes are not.

# Definition of ground under repair (2023): what the Committee defines, holes made in maintenance, material piled for
# removal.
rules-fact-worn-ground = Worn or bare ground is not ground under repair unless the Committee says so.

# Rule 13.1c (players' rule finder of The R&A; USGA interpretations).
rules-fact-sand-on-green = On the putting green you may brush away sand and loose soil (Rule 13.1c). You may not do so anywhere else on the course.

# Rule 13.1c and interpretations 13.1c(2).
rules-fact-repair-on-green = On the putting green you may repair damage (Rule 13.1c). Old hole plugs, joints between { -turves } and marks of our machines count as damage.

# Rule 13.1c and interpretations 13.1c(2).
rules-fact-no-repair-on-green = On the putting green you may not repair aeration holes or grooves cut by blades (Rule 13.1c). Nor may you repair marks of rain or watering. The same goes for weeds, bare or diseased patches, and wear of the hole.

# Definition of loose impediment and Rule 15.1.
rules-fact-plugs = The small plugs of soil that { -hollow-tines } take out are loose impediments. You may move them (Rule 15.1).

# Definition of ground under repair (2023) and Rule 16.1.
rules-fact-piles = Grass cuttings, leaves and the like that we have piled up to clear later are ground under repair. Rule 16.1 says how you take free relief.

## What a Model Local Rule means, said only where the Committee has adopted that number

# Committee Procedures 8D, Model Local Rule D-2; Rule 13.1f.
rules-about-D-2 = The temporary green is then the green of the hole. The usual green is a wrong green, from which you must take free relief (Rule 13.1f).

# Committee Procedures 8D, Model Local Rule D-3.
rules-about-D-3 = A wrong green does not count as in your way if only your stance is on it.

# Model Local Rule E-3; Rule 14.7a for the penalty.
rules-about-E-3 = You may place your ball once, no nearer the hole, within the area that the Committee has set. This holds in the general area, on grass cut to fairway height or less.

# Model Local Rule E-4.
rules-about-E-4 = You may take relief if your ball lies in or touches an aeration hole. You may not take it for your stance or your line of play.

# Model Local Rule E-8; Rules 16.1f and 17.1e.
rules-about-E-8 = The Committee has made a no play zone. You must not play a ball from there: take relief under Rule 16.1f, or under 17.1e in a penalty area.

# Committee Procedures 8F, examples of Model Local Rule F-1.
rules-about-F-1 = With it the Committee says how things on the course count. It may name a fence around a green as an immovable obstruction, a fixed thing made by people.
