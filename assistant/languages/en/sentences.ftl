# What is said. A sentence's attributes .terse and .learner are its forms for those who want less or more.
# Parts of sentences begin small and have no full stop; whole sentences begin with a capital and end with a stop.

## Lists

join = { $before }, { $after }
join-acts = { $before }; { $after }
join-notes = { $before } { $after }
join-marks = { $before }; { $after }
join-counts = { $before }; { $after }
join-how = { $before }. { $after }
join-heel = { $before }; { $after }
join-heels = { $before } { $after }
join-check = { $before }; { $after }
join-yarns = { $before }; { $after }
join-causes = { $before }, or { $after }
join-pairs = { $before }; { $after }
join-choices = { $before }, { $after }

## Lengths

length-cm = { $tenths ->
        [0] { $whole ->
            [one] one centimetre
           *[other] { $whole } centimetres
        }
       *[other] { $whole } point { $tenths } centimetres
    }
length-in = { $quarters ->
        [1] { $whole ->
            [0] a quarter of an inch
           *[other] { $whole } and a quarter inches
        }
        [2] { $whole ->
            [0] half an inch
           *[other] { $whole } and a half inches
        }
        [3] { $whole ->
            [0] three quarters of an inch
           *[other] { $whole } and three quarter inches
        }
       *[other] { $whole ->
            [one] one inch
           *[other] { $whole } inches
        }
    }

## Shared pieces

times = { $times ->
        [1] { "" }
        [2] { " " }twice
       *[other] { " " }{ $times } times
    }
in-stage = { CAPITAL($stage) }, { round-or-row } { $round } of { $of }
# heel turn and flap go back and forth
round-or-row = { $stage ->
        [stage-heel-turn] row
        [stage-heel-flap] row
       *[other] round
    }

## Names of things

stage-cast-on = cast-on
stage-toe = toe
stage-foot = foot
stage-gusset = gusset
stage-heel-turn = heel turn
stage-heel-flap = heel flap
stage-heel = heel
stage-leg = leg
stage-cuff = cuff
stage-bind-off = bind-off
stage-brim = brim
stage-body = body
stage-crown = crown
stage-hand = hand
stage-sleeve = sleeve
stage-top = top
half-front = front
half-back = back
# of a heel made last
half-sole = sole side
half-leg = leg side
sock-first = first sock
    .the = the first sock
sock-second = second sock
    .the = the second sock
sock-named = { $name }
piece-first = first piece
    .the = the first piece
piece-second = second piece
    .the = the second piece
grain-group = group by group
grain-half = half by half
grain-needle = needle by needle
grain-side = side by side of the needle
grain-round = round by round
grain-follow = as the work asks for it

sock-both = both socks
    .the = both socks
where-half = { $sock }, { $half }
    .before = { $sock }, { $half }:
    .the = the { $half } of { AS($sock, form: "the") }
where-piece = { $sock }
    .before = { $sock }:
where-one-half = { $half }
    .before = { $half }:
    .the = the { $half }
where-heel-row = { $sock }, row { $row }
    .terse = row { $row }
    .before = { $sock }, row { $row }:
    .before-terse = row { $row }:
    .the = the heel of { AS($sock, form: "the") }
where-side = { $half ->
        [half-front] both fronts
        [half-sole] both sole sides
        [half-leg] both leg sides
       *[half-back] both backs
    }
    .before = { $half ->
        [half-front] fronts
        [half-sole] sole sides
        [half-leg] leg sides
       *[half-back] backs
    }
    .before-learner = { $half ->
        [half-front] both fronts:
        [half-sole] both sole sides:
        [half-leg] both leg sides:
       *[half-back] both backs:
    }
where-round = round { $round } of { $of }
    .before = round { $round } of { $of },
where-sock-round = { $sock }, round { $round } of { $of }
    .before = { $sock }, round { $round } of { $of }:
sock-ahead = the { $sock } is ahead, in the { $stage }, { round-or-row } { $round } of { $of }
sock-finished = the { $sock } is finished
where-rest-of-round = rest of round { $round } of { $of }
    .before = rest of round { $round } of { $of },

## Operations

op-co = cast on { $times }
op-k = knit { $times }
op-p = purl { $times }
op-ktbl = knit { $times } through the back
op-ptbl = purl { $times } through the back
op-sl-wyib = slip { $times }
    .learner = slip { $times } with the yarn behind
op-sl-wyif = slip { $times } with the yarn in front
    .terse = slip { $times }
op-kfb = knit front and back{ times }
op-pfb = purl front and back{ times }
op-m1l = make one left{ times }
    .learner = make one left by lifting the strand from the front{ times }
op-m1r = make one right{ times }
    .learner = make one right by lifting the strand from the back{ times }
op-lifted-l = lifted increase left{ times }
op-lifted-r = lifted increase right{ times }
op-yo = yarn over{ times }
op-k2tog = knit two together{ times }
op-ssk = slip slip knit{ times }
    .learner = slip two as if to knit and knit them together through the back{ times }
op-p2tog = purl two together{ times }
op-ssp = slip slip purl{ times }
op-k3tog = knit three together{ times }
op-sssk = slip three and knit them together{ times }
op-s2kp2 = slip two together and knit one and pass the slipped over{ times }
op-wrap-turn = wrap the next
    .learner = bring the yarn round the next stitch
op-ds = make a double stitch
    .learner = slip one with the yarn in front and pull the yarn up and over into a double stitch
op-twin = knit a twin into the stitch below
op-bo = bind off { $times }
op-fasten = fasten off
op-graft = graft { $times }
op-three-needle = bind off { $times } from both needles
    .learner = knit { $times } times one from each needle together, each time passing the one before over
op-k2tog-strand = lift the corner strand and knit it together with the next
op-ssk-strand = slip one and lift the corner strand and knit both through the back
op-yo-bo = bind off { $times } with yarn overs
    .learner = bind off { $times }, each by a yarn over, a stitch, and both loops passed over it
op-sew-bo = sew off { $times }
op-skp = slip one, knit one and pass it over{ times }
op-sk2p = slip one, knit two together and pass it over{ times }
op-p3tog = purl three together{ times }
op-place-marker = place a marker
op-slip-marker = slip the marker
op-remove-marker = take out the marker
op-gather = draw the tail through { $times }
op-waste = knit { $times } with waste yarn and slide them back
    .learner = knit { $times } with waste yarn, slide them back, and leave the waste yarn hanging
op-thread = run a thread through the next { $times }
    .learner = run a thread through the next { $times }, which stay on the needle: the heel is opened above it later
op-co-waste = cast on { $times } over waste yarn
    .learner = cast on { $times } over a strand of waste yarn: provisionally, their feet to be freed later
op-free = put { $times } freed loops on the needle
op-pick-up-k = pick up and knit { $times } along the flap
    .learner = pick up and knit { $times } along the flap's edge, one in every slipped edge stitch and one in the corner
op-pick-up = lift { $times ->
        [one] the corner strand
       *[other] { $times } strands
    }
op-graft-rib = graft { $times } pairs
    .learner = graft { $times } times, each knit together with the purl beside it
    .learner = thread the tail and draw it through the last { $times }, then pull it tight
with-wraps = { $work } with wraps
    .learner = { $work } together with the wraps
with-doubles = { $work } with doubles as one
    .learner = { $work } with both legs of each double stitch as one
repeat = { $times ->
        [1] { $work }
        [2] twice { $work }
       *[other] { $times } times { $work }
    }
    .join-work = { $before } { $after }
work-cast-on = cast on
work-plain = plain
work-increase = increase
    .learner = knit one, make one right, knit to the last, make one left, knit the last
work-decrease = decrease
work-narrow = decrease at both edges
    .learner = knit one, slip slip knit, knit to the last three, knit two together, knit one
work-closing = close the corners
    .learner = lift the strand at each corner and work it together with the stitch beside it
work-increase-left-first = increase
    .learner = knit one, make one left, knit to the last, make one right, knit the last
work-increase-kfb = increase
    .learner = knit the first front and back, knit to the last two, knit front and back, knit the last
work-increase-lifted = increase
    .learner = knit one, a lifted increase right, knit to the last, a lifted increase left, knit the last
work-increase-one-edge = increase at one edge
work-increase-centre = increase at the centre
work-decrease-centre = decrease at the centre
work-open-heel = put the freed loops on the needle
work-keep-heel = keep the heel's stitches
work-graft = graft
work-three-needle = bind off both halves together
work-gather = draw the toe together
work-pick-up = pick up along the flap, and knit
work-holes = knit two together and yarn over, in turn
work-slipped = slip every other stitch
work-rib = rib
work-bind-off = bind off
work-mixed = stitch by stitch
on-half = { $half } { $work }
chart-row = chart row { $row } of { $of }
    .terse = chart row { $row }
in-main = { $times } main
in-contrast = { $times } contrast
in-yarn = { $times } { $name }
work-in-main = { $work } in main
work-in-contrast = { $work } in contrast
work-in-yarn = { $work } in { $name }

## Acts

act-prepare-the-tips = hold both tips side by side
    .learner = hold both needle tips side by side, pointing the same way, the tail between them
act-cast-on-loosely = hold both tips together to cast on
    .learner = cast on over both needle tips held together, so that the edge stretches over the heel, half of the loops for each half
act-secure-the-tail = trap the tail under the yarn
    .learner = trap the tail under the working yarn, or the first loop comes off
act-slide-along = slide these loops along
    .learner = slide these loops along to make room for the other sock
act-draw-the-back-tip = draw out the back tip
    .learner = draw out the back tip, so that the back loops rest on the cable and the front faces you
act-join-in-the-round = join in the round, not twisted
    .terse = join in the round
    .learner = turn all loops the same way and join them in the round, so that they are not twisted
act-pull-out-the-waste-yarn = pull out the waste yarn
    .learner = pull out the waste yarn, stitch by stitch, and catch the loops on both sides of it
act-snip-the-heel-open = snip the heel open
    .learner = snip one stitch in the round above the thread, and unpick that round to the ends of the thread
act-join-the-yarn = join the yarn
act-turn-inside-out = turn the sock inside out
act-take-the-first-needle = first needle
    .learner = take the first needle, which holds the fronts
act-take-the-second-needle = second needle
    .learner = take the second needle, which holds the backs
act-bring-the-waiting-loop = bring the waiting loop over
    .learner = slip the loop that waits on the first needle over to the second
act-put-it-on-one-needle = put the back on one needle
    .learner = slip all the stitches of the back onto one needle, for the heel
act-slip-the-rest-over = slip the rest to the next needle
act-take-the-next-needle = next needle
    .learner = take the next needle, and pull its first stitch snug
act-sew-the-hem-down = sew the hem down inside
    .learner = fold the cuff inside at the holes, and sew its edge down loosely
act-change-yarn = change yarn
    .learner = change to this sock's yarn, in the gap
act-snug = snug
    .learner = pull the first two stitches snug
act-pull-the-tail = pull the tail
act-marker = hang the marker
act-lifeline = thread a lifeline
    .learner = thread a lifeline through every loop of both socks
# the two alternate, so that the balls do not tangle
act-turn-clockwise = turn
    .learner = turn clockwise
act-turn-anticlockwise = turn back
    .terse = turn
    .learner = turn anticlockwise
act-turn = turn
act-cut = cut the yarn
act-cut-a-long-tail = cut a long tail
    .learner = cut a tail four times as long as the cuff is wide
act-weave-in = weave in the ends
act-wash = wash and dry them flat
act-measure-foot = measure the foot: { $due }
act-measure-leg = measure the leg: { $due }
act-try-on-foot = try them on: the foot is { $due } long
    .terse = try them on: foot { $due }
act-measure-height = measure the height: { $due }
act-try-on-height = try it on: it is { $due } high
    .terse = try it on: { $due }
act-try-on-leg = try them on: the leg is { $due } high
    .terse = try them on: leg { $due }

## Counts

makes = makes { $count }
makes-each = makes { $count } each
    .terse = makes { $count }
makes-each-half = makes { $count } on each half
makes-front-back = makes { $front } in front, { $back } at the back
makes-on = { $where } makes { $count }
stage-begins = { $rounds ->
        [one] { $stage }, one round
       *[other] { $stage }, { $rounds } rounds
    }
heel-begins = heel
heel-stage-begins = { $rows ->
        [one] { $stage } of the { $sock }, one row
       *[other] { $stage } of the { $sock }, { $rows } rows
    }
half-counts = { $where }: { $before } before, { $after } after
turn-wraps = wraps: { $on_right } on the right, { $on_left } on the left, { $unmarked } unmarked in the middle
turn-doubles = doubles: { $on_right } on the right, { $on_left } on the left, { $unmarked } unmarked in the middle
flap-gussets = gusset stitches to go: { $on_right } on the right, { $on_left } on the left
toe-rows-ahead = { $rows ->
    [one] And one toe row.
   *[other] And { $rows } toe rows.
}
heel-rows-ahead = { $rows ->
        [one] And one heel row.
       *[other] And { $rows } heel rows.
    }
mark-of-other-plan = mark { $number } belongs to another plan
mark = mark { $number }: { $stage }, { round-or-row } { $round } of { $of }, { $where }

## Coming back

marker-faces-you = the marker faces you
marker-hidden = the marker is on the far side
marker-not-yet = there is no marker yet
marker-at-start = the marker hangs where the round begins
yarn-in-the-gap = yarn of the { $sock } in the gap
    .learner = the yarn of the { $sock } hangs in the gap between the socks
yarn-at-the-edge = yarn of the { $sock } at the edge
    .learner = the yarn of the { $sock } hangs at the outer edge
yarn-at-the-working-point = yarn of the { $sock } where you work
    .learner = the yarn of the { $sock } hangs where the next stitch is worked
yarn-cut = yarn of the { $sock } is cut
check-count = { AS($where, form: "the") } has { $count }
check-middle = { AS($where, form: "the") } has { $count } unmarked in the middle

## Likely causes of a wrong count

cause-cast-on-miscounted = the cast-on was miscounted
cause-first-loop-lost = the first loop came off
cause-increase-missed = an increase was missed
cause-increase-round-twice = an increase round was worked twice
cause-decrease-missed = a decrease was missed
cause-decreased-twice = a decrease was worked once too often
cause-increased-on-front = the front was increased too
cause-dropped-stitch = a stitch was dropped
cause-yarn-over-or-split = there is a stray yarn over or a split stitch
cause-join-forgotten = a join was forgotten
cause-two-eaten = two were taken at once
cause-corner-not-joined = a corner was not joined
cause-worked-too-far = the row went too far
cause-bound-off-early = some were bound off early

## What a dropped question was about

wish-at-round = setting the round
wish-ripped-back = ripping back
wish-at-round-on = setting the round of the { $sock }
wish-ripped-back-on = ripping back the { $sock }
wish-next = going on
wish-stop = stopping

## The step in hand

call = { $stage ->
        [none] { "" }
       *[other] { CAPITAL($stage) }.{ " " }
    }{ $where ->
        [none] { call-unplaced }
       *[other] { call-placed }{ call-count }
    }
# no place is said: what comes first begins with a capital
call-unplaced = { $acts ->
        [none] { $work ->
            [none] { $then ->
                [none] { $makes ->
                    [none] { "" }
                   *[other] { CAPITAL($makes) }.
                }
               *[other] { CAPITAL($then) }{ call-count }
            }
           *[other] { CAPITAL($work) }{ call-then }{ call-count }
        }
       *[other] { CAPITAL($acts) }{ call-work }{ call-then }{ call-count }
    }
call-placed = { $acts ->
        [none] { $work ->
            [none] { $then ->
                [none] { CAPITAL($where) }
               *[other] { CAPITAL($where, form: "before") } { $then }
            }
           *[other] { CAPITAL($where, form: "before") } { $work }{ call-then }
        }
       *[other] { CAPITAL($where, form: "before") } { $acts }{ call-work }{ call-then }
    }
call-work = { $work ->
        [none] { "" }
       *[other] ; { $work }
    }
call-then = { $then ->
        [none] { "" }
       *[other] , { $then }
    }
# the count comes last; after several things it is a sentence of its own
call-count = { $makes ->
        [none] .
       *[other] { $work ->
            [one] , { $makes }.
           *[other] . { CAPITAL($makes) }.
        }
    }
call-round = { CAPITAL($round) } of { $of }.
    .learner = Round { $round } of { $of }, plain all the way round both socks.
call-round-one = { CAPITAL($round) } of { $of }.
    .learner = Round { $round } of { $of }, plain all the way round.
call-round-same = { CAPITAL($round) } of { $of }.
    .learner = Round { $round } of { $of }, all the way round as the one before.

finished-written = That was the last of it: it is done.
    .terse = It is done.
finished-already-written = It is done; there is nothing after this.
finished = That was the last of it: both socks are done.
    .terse = Both socks are done.
finished-already = Both socks are done; there is nothing after this.
undone = Undone. { $call }
undone-other-plan = Undone: back to the plan used before.
nothing-to-undo = There is nothing to undo.
redone = Redone. { $call }
redone-other-plan = Redone: on to the plan used after.
nothing-to-redo = There is nothing to redo.
went-back = { $rounds ->
        [one] Back one round.
       *[other] Back { $rounds } rounds.
    } { $call }
went-back-fewer = { $rounds ->
        [one] Only one round back, not { $asked }.
       *[other] Only { $rounds } rounds back, not { $asked }.
    } { $call }
cannot-go-back = This is the beginning: there is no round to go back.
went-forward = { $rounds ->
        [one] On by one round.
       *[other] On by { $rounds } rounds.
    } { $call }
went-forward-fewer = { $rounds ->
        [one] Only one round on, not { $asked }.
       *[other] Only { $rounds } rounds on, not { $asked }.
    } { $call }
cannot-go-forward = This is the last round: there is none to go forward.
no-rounds = That is no round at all: say how many, from one up.
ask-at-round = { in-stage }: are you there?
ask-at-round-on = { CAPITAL($sock) }, { $stage }, { round-or-row } { $round } of { $of }: are you there with it?
no-such-round = The { $stage } has { $of ->
        [one] one { round-or-row }
       *[other] { $of } { round-or-row }s
    }, no { round-or-row } { $round }.
ask-ripped-back = Ripped back to { $stage }, { round-or-row } { $round } of { $of }?
ask-ripped-back-on = The { $sock } ripped back to { $stage }, { round-or-row } { $round } of { $of }?
ripped-back-to-where = Ripped back to where? Say the round or the part of the sock.
no-such-stage = There is no part of that name.
not-knitted-yet = { CAPITAL($stage) }, { round-or-row } { $round } is not knitted yet: go forward to reach it.
ask-next = Is this done already? { $call }
ask-stop = { $to_go ->
        [one] One stitch to go to the end of this side, on { AS($where, form: "the") }. Stop here?
       *[other] { CAPITAL($to_go) } stitches to go to the end of this side, on { AS($where, form: "the") }. Stop here?
    }
    .terse = { CAPITAL($to_go) } to go, { $where }. Stop here?
place-set = { in-stage }. { $call }
place-set-on = { CAPITAL($sock) }: { $stage }, { round-or-row } { $round } of { $of }. { $call }
dropped = Dropped: { $wish }.
nothing-asked = Nothing was asked.

wish-replan = planning anew
ask-replan = Your rounds are { $rounds } to ten centimetres, not { $planned }. With { $changes } the { $part } comes to { $length }: shall I take that?
    .terse = { CAPITAL($changes) }?
    .join-changes = { $before } and { $after }
replan-change = { $after } rounds of { $stage } instead of { $before }
replan-taken = Taken. { in-stage }. { $call }
tape-passed = Your rounds are { $rounds } to ten centimetres: the { $part } comes to { $length } instead of { $aimed }. To make it shorter, rip back and measure again.
tape-same = Your rounds are { $rounds } to ten centimetres: the { $part } stays as planned.
tape-too-early = That tells too little of the { $part } yet: measure again when there is more of it, three centimetres at the least.
tape-too-late = The { $part } is past changing: to make it longer or shorter, rip back first.
tape-second-sock = The first sock is done, and the second is its like: give the { $part } as many rounds as the first has.
tape-no-plan = From this measure no other plan can be made here: the plan stays as it is.
tape-unlikely = By the plan the { $part } is about { $planned } here, and { $length } is far from it: measure again.
yarn-taken-as = Taken as { $metres } metres to a hundred grams.
yarn-lost-otherwise = By the plan the ball has lost { $reckoned } grams, not { $lost }: was it this one?
join-doubts = { $before } { $after }
yarn-doubts = { $doubts ->
        [none] { "" }
       *[other] { " " }{ $doubts }
    }
yarn-left-enough = { CAPITAL($grams) } grams are about { $metres } metres. For the rest of { AS($whose, form: "the") } that will do, with about { $spare } grams left over.{ yarn-doubts }
yarn-left-short = { CAPITAL($grams) } grams are about { $metres } metres. For { AS($whose, form: "the") } they reach to { $stage }, { round-or-row } { $round } of { $of }, with the bind-off kept back; the leg they allow is { $leg }.{ yarn-doubts }
yarn-left-short-foot = { CAPITAL($grams) } grams are about { $metres } metres. For { AS($whose, form: "the") } they reach to { $stage }, { round-or-row } { $round } of { $of }, with the bind-off kept back: a new ball is needed.{ yarn-doubts }
yarn-left-too-much = A ball weighs { $ball } grams, not { $grams }: weigh it again, without the needles.
new-ball = A new ball for { AS($sock, form: "the") }. A good place to join it: { $stage }, { round-or-row } { $round } of { $of }, at the start of { AS($where, form: "the") }. Leave { $tail } centimetres hanging, and keep { $metres } metres for both bind-offs.
new-ball-here = A new ball for { AS($sock, form: "the") }. Join it here, at the start of { AS($where, form: "the") }. Leave { $tail } centimetres hanging, and keep { $metres } metres for both bind-offs.
new-ball-anywhere = A new ball for { AS($sock, form: "the") }. No better place follows: join it where you are, leave { $tail } centimetres hanging, and keep { $metres } metres for both bind-offs.
where-am-i = { CAPITAL($where) }. { in-stage }. { $apart ->
        [none] { "" }
       *[other] { CAPITAL($apart) }.{ " " }
    }{ $counts ->
        [none] { "" }
       *[other] { CAPITAL($counts) }.{ " " }
    }{ $heel ->
        [none] { "" }
       *[other] { CAPITAL($heel) }.{ " " }
    }In hand: { $call }
how-many = { CAPITAL($where) }: { $now } now, { $after } after this, { $to_go } to go on this half.
    .terse = { CAPITAL($now) } now, { $after } after, { $to_go } to go.
how-many-whole = { CAPITAL($where) }: { $now } now, { $after } after this, { $to_go } to go in this round.
    .terse = { CAPITAL($now) } now, { $after } after, { $to_go } to go.
how-far = { $rounds ->
        [one] One round to go in the { $stage }
       *[other] { CAPITAL($rounds) } rounds to go in the { $stage }
    }, { $in_sock } in the sock. { $heels }
    .terse = { CAPITAL($rounds) } in the { $stage }, { $in_sock } in the sock. { $heels }
how-far-written = { $rounds ->
        [one] One round to go in the { $stage }
       *[other] { CAPITAL($rounds) } rounds to go in the { $stage }
    }, { $in_sock } in all. { $heels }
    .terse = { CAPITAL($rounds) } in the { $stage }, { $in_sock } in all. { $heels }
how-far-in-heel = { $rows ->
        [one] One row to go in the { $stage }
       *[other] { CAPITAL($rows) } rows to go in the { $stage }
    }, then { $in_sock ->
        [one] one round
       *[other] { $in_sock } rounds
    } in the sock. { $heels }
    .terse = { CAPITAL($rows) } in the { $stage }, { $in_sock } in the sock. { $heels }
what-next = After this: { $call }
explanation = { CAPITAL($how) }.
nothing-to-explain = That is knit and purl alone.

# How each is worked; common practice, as any stitch dictionary has it.

explain-co = Cast on: with the tail over the thumb and the yarn over the finger, draw each loop up through the thumb’s, and let it lie loosely
explain-closed-toe = Closed toe: wind the yarn round both tips together, away from you over the top; each time round lays one loop on the front tip and one on the back, until both have their count
explain-ktbl = Knit through the back: put the tip into the leg behind the needle, and knit; the stitch twists
explain-ptbl = Purl through the back: from behind, put the tip into the back leg, and purl; the stitch twists
explain-sl-wyib = Slip: pass the stitch over unworked, as if to purl, the yarn behind it
explain-sl-wyif = Slip with the yarn in front: bring the yarn to you, and pass the stitch over unworked, as if to purl
explain-kfb = Knit front and back: knit the stitch but leave it on, knit it once more through the back, then let it go
explain-pfb = Purl front and back: purl the stitch but leave it on, purl it once more through the back, then let it go
explain-m1l = Make one left: lift the strand before the next stitch from front to back onto the left tip, and knit it through the back
explain-m1r = Make one right: lift the strand before the next stitch from back to front onto the left tip, and knit it through the front
explain-lifted-l = Lifted increase left: with the left tip lift the left leg of the stitch two rows below the one just knitted, and knit it through the back
explain-lifted-r = Lifted increase right: with the right tip lift the right leg of the stitch below the next one onto the left tip, and knit it
explain-yo = Yarn over: lay the yarn over the right tip from front to back, and go on; it is a loop of its own
explain-k2tog = Knit two together: put the tip into the next two at once, as if to knit, and knit them as one; it leans right
explain-ssk = Slip slip knit: slip two, one after the other, as if to knit; put the left tip into the front of both, and knit them as one; it leans left
explain-p2tog = Purl two together: put the tip into the next two at once, as if to purl, and purl them as one
explain-ssp = Slip slip purl: slip two, one after the other, as if to knit; give both back, and purl them as one through the back
explain-k3tog = Knit three together: put the tip into the next three at once, and knit them as one
explain-sssk = Slip three, one after the other, as if to knit; put the left tip into the front of all, and knit them as one
explain-s2kp2 = Slip two at once, as if to knit two together; knit one; pass both slipped stitches over it; the middle one lies on top
explain-skp = Slip one as if to knit; knit one; pass the slipped stitch over it; it leans left
explain-sk2p = Slip one as if to knit; knit two together; pass the slipped stitch over
explain-p3tog = Purl three together: put the tip into the next three at once, as if to purl, and purl them as one
explain-wrap-turn = Wrap and turn: bring the yarn to the other side, slip the next stitch, bring the yarn back, return the stitch; the yarn now lies around its foot, and you turn
explain-with-wraps = With wraps: lift the wrap at the stitch’s foot onto the left tip too, and work it as one with its stitch
explain-ds = Double stitch: with the yarn in front slip the stitch as if to purl, then pull the yarn up and over to the back until two legs show; they count as one
explain-with-doubles = Doubles as one: put the tip into both legs of a double stitch, and work them as one
explain-twin = Twin: work into the stitch just below the next one, and lay the new loop beside it on the left tip; the two count as one, and you turn
explain-bo = Bind off: work one, then pass the stitch that waits over it and off
explain-bind-off-together = Bind off: slip the waiting stitch back beside the next, and knit the two together through the back; the new one waits
explain-fasten = Fasten off: cut the yarn, draw the end through the last loop, and pull it tight
explain-yo-bo = Bind off with yarn overs: lay the yarn over the tip from back to front, work one, then pass the yarn over and the waiting stitch over it
explain-sew-bo = Sewn bind-off: thread the tail; put the needle through the next two as if to purl, then back through the first as if to knit, and let that one go
explain-graft = Graft: thread the tail; front as if to knit and off, the next as if to purl and on; back as if to purl and off, the next as if to knit and on
explain-graft-rib = Graft a rib: the knits stand on one needle and the purls on another; then front as if to knit and off, the next as if to purl and on; back as if to purl and off, the next as if to knit and on
explain-three-needle = Bind off from both needles: knit one of the front together with one of the back onto a third tip, and pass the one before over it
explain-k2tog-strand = Close the corner: lift the strand between the needles onto the left tip, and knit it together with the stitch beside it
explain-ssk-strand = Close the corner: slip one, lift the strand between the needles, and knit both through the back
explain-gather = Gather: thread the tail, draw it through each loop as it comes off, and in the end pull it tight
explain-waste = Waste yarn: knit these with a smooth yarn of another colour, let its ends hang, slide them back, and knit them again with your own yarn
explain-thread = Thread: with a blunt needle run a thin thread through these loops, which stay on the needle
explain-free = Put the loops on: pick up each loop along the opening, its right leg in front
explain-pick-up = Pick up: lift the strand at the corner onto the needle, twisted, so that no hole is left
explain-co-waste = Cast on over waste yarn: let your yarn go round the tip and round a strand of smooth waste yarn by turns; the strand comes out later, and frees the loops’ feet
explain-pick-up-k = Pick up and knit: put the tip under both legs of an edge stitch, and draw the yarn through as a new loop
explain-prepare-the-tips = Hold the two tips of the long needle side by side, pointing the same way, with the tail hanging between them
explain-cast-on-loosely = Hold both tips together as one and cast on over both; draw one tip out when you have all the loops
explain-secure-the-tail = Lay the tail under the working yarn and between the tips, or the first loop comes off
explain-draw-the-back-tip = Draw the tip that holds the back loops out until they rest on the cable; the front stays on its tip, to be knitted first
explain-join-in-the-round = Lay all loops with their edge inward, and work the first of them with the yarn from the last
explain-pull-out-the-waste-yarn = Pick the waste yarn out stitch by stitch, and put each loop that comes free on a needle, above and below
explain-snip-the-heel-open = Cut one stitch in the middle of the round above the thread, and unpick to both sides as far as the thread goes
explain-lifeline = Thread a blunt needle with smooth yarn, and draw it through every loop on the needle, not through markers; leave it in: you can rip back to it
explain-try-on = Pull the cable so far that the loops spread, and put the sock on; it may stretch, but must not strain
explain-measure = Lay it flat, unstretched, and measure along the middle
explain-sew-the-hem-down = Fold the edge inside, and sew each of its loops to the stitch behind it, loosely
explain-weave-in = With a blunt needle, lead each end along some stitches inside, turn back once, and cut it off
explain-wash = Wash by hand, lukewarm; press the water out in a towel, pull into shape, and dry flat
explain-marker = Hang a marker that opens into the fabric at the front of the first sock, to know it by touch

again = There is nothing to say again.
grain-set = { CAPITAL($grain) }. { $call }
grain-finest = These are the smallest steps.
grain-coarsest = These are the largest steps.
marked = Mark { $number } set.
marks = { CAPITAL($marks) }.
no-marks = There are no marks.
count-right = { CAPITAL($stitches) } is right for { AS($where, form: "the") }.
count-too-many = { CAPITAL($stitches) } on { AS($where, form: "the") } should be { $expected }: { $difference } too many. { $causes ->
        [none] { "" }
       *[other] Perhaps { $causes }.
    }
    .terse = { CAPITAL($stitches) }, should be { $expected }: { $difference } too many.
count-too-few = { CAPITAL($stitches) } on { AS($where, form: "the") } should be { $expected }: { $difference } too few. { $causes ->
        [none] { "" }
       *[other] Perhaps { $causes }.
    }
    .terse = { CAPITAL($stitches) }, should be { $expected }: { $difference } too few.
stopped = Stopped in the { $stage }, { round-or-row } { $round } of { $of }, { $where }. It is all written down.
    .terse = Stopped, { $stage }, { round-or-row } { $round } of { $of }, { $where }.
stopped-finished-written = Stopped. It is done.
stopped-finished = Stopped. Both socks are done.
resume = { CAPITAL($pair) }. { CAPITAL($where) }. { in-stage }. { $apart ->
        [none] { "" }
       *[other] { CAPITAL($apart) }.{ " " }
    }{ CAPITAL($marker) }. { $yarns ->
        [none] { "" }
       *[other] { CAPITAL($yarns) }.{ " " }
    }{ $check ->
        [none] { "" }
       *[other] To check: { $check }.{ " " }
    }In hand: { $call }
resume-whole = { CAPITAL($pair) }. { in-stage }. { $apart ->
        [none] { "" }
       *[other] { CAPITAL($apart) }.{ " " }
    }{ CAPITAL($marker) }. { $yarns ->
        [none] { "" }
       *[other] { CAPITAL($yarns) }.{ " " }
    }{ $check ->
        [none] { "" }
       *[other] To check: { $check }.{ " " }
    }In hand: { $call }
resume-finished-written = { CAPITAL($pair) }: it is done.
resume-finished = { CAPITAL($pair) }: both socks are done.

## Fields of a plan file

field-schema-version = the file's version
field-name = the pair's name
field-socks = the names of the two socks
field-swatch = the swatch
field-stitches = the swatch's stitches
field-rounds = the swatch's rounds
field-over = the width of the swatch
field-worked = how the swatch was knitted
field-washed = whether the swatch was washed
field-counts = the further counts
field-foot-length = the foot length
field-shoe = the shoe size
field-ball = the ball of the foot
field-ankle = the ankle
field-heel-diagonal = the way round the heel
field-calf = the calf
field-leg = the leg
field-leg-height = the height of the leg by name
field-cuff = the cuff
field-ease-percent = the ease
field-around = the stitches around
field-cast-on = the cast-on
field-gusset = the gusset
field-foot-rounds = the plain rounds of the foot
field-leg-rounds = the rounds of the leg
field-cuff-rounds = the rounds of the cuff
field-calf-shape = the increases for the calf
field-needle = the needle
field-skein = the weight of a ball
field-skein-length = the length of a ball's yarn
field-skeins = the number of balls
field-direction = the direction
field-toe = the toe
field-increase = the way to increase
field-sole = the sole
field-heel = the heel
field-leg-style = the leg style
field-cuff-style = the cuff style
field-bind-off = the bind-off
field-needles = the needles
field-one-at-a-time = one at a time
field-through-back-loop = the choice of knitting through the back
field-chart = the chart
field-practice = the choice of practice size

## Cures for a foot too short

cure-cast-on = cast on { $loops } loops
cure-rounded-toe = choose the rounded toe
cure-rounded-toe-cast-on = choose the rounded toe and cast on { $loops } loops
cure-around = work { $stitches } stitches around
cure-gauge = knit to a gauge of { $rounds } rounds to ten centimetres
cure-heel-with-gusset = choose a heel with a gusset, such as the one called wrapped
cure-gusset = make the gusset { $stitches } stitches wide on each side
cure-calf-shaped = choose the leg called { $name }
cure-leg = make the leg { $length } high, or less
cure-bind-off = choose the bind-off called { $name }
cure-cast-on-needle = cast on over a much thicker needle
cure-bind-off-needle = bind off with a much thicker needle
cure-needle-up = go up a needle size
cure-needle-down = go down a needle size
cure-needle-up-to = go up a needle size, to { $millimetres } millimetres
cure-needle-down-to = go down a needle size, to { $millimetres } millimetres
cure-measure-again = measure the foot and count the swatch again
cure-foot = make the foot { $length } long

## What was estimated, rounded, or looks doubtful

foot-from-shoe = Shoe size { $shoe } means a foot of { $length }, give or take { $give_or_take }; measure it if you can.
foot-in-shoes = A foot of { $foot } wears { $sizes }, give or take half a size.
foot-estimated = The foot length was estimated from the other measures: { $length }, give or take { $give_or_take }. Measure it if you can.
ball-estimated = The ball of the foot was estimated: { $length }, give or take { $give_or_take }.
ankle-estimated = The ankle was estimated: { $length }, give or take { $give_or_take }.
heel-estimated = The way round the heel was estimated: { $length }, give or take { $give_or_take }.
calf-estimated = The calf was estimated: { $length }, give or take { $give_or_take }; measure it for a leg this high.
child-estimated = Estimates for a child's foot are rough: measure if you can.
leg-chosen = The leg was chosen to be { $length }.
leg-height-unused = The leg is as long as you gave it: its height by name is not used.
calf-shaped = From round { $first } of the leg its back widens: { $pairs } pairs of increases at the centre, a pair every { $every } rounds, make { $stitches } stitches, { $circumference } around at the top.
calf-narrowed = The leg begins { $stitches } stitches wide, { $circumference } around. From its round { $first } its back narrows: { $pairs } pairs of decreases at the centre, a pair every { $every } rounds.
calf-straight = A leg of { $leg } needs no increases for the calf: it stays straight.
cuff-chosen = The cuff was chosen to be { $length }.
ease-chosen = The socks were chosen to be { $percent } percent smaller around than the foot.
foot-shortened = The sock's foot is { $finished }, { $shorter } shorter than the foot of { $foot }, so that it fits snugly.
stitches-rounded = { CAPITAL($exact) } stitches were rounded to { $stitches }, a multiple of { $multiple }.
around-yours = Your own { $stitches } stitches make { $circumference } around, { $percent } percent less than the foot.
around-larger-than-foot = { CAPITAL($stitches) } stitches make { $circumference } around, wider than the ball of { $ball }: take { $better }.
around-tight = { CAPITAL($stitches) } stitches make { $circumference } around a ball of { $ball }, { $percent } percent less: that is tight, take { $better }.
foot-yours = With { $rounds } plain rounds of your own the sock's foot comes to { $made }, for a foot of { $foot }.
foot-rounded = The foot comes to { $made } instead of { $wanted }, rounded to { $rounds } whole rounds.
leg-rounded = The leg comes to { $made } instead of { $wanted }, rounded to { $rounds } whole rounds.
cuff-rounded = The cuff comes to { $made } instead of { $wanted }, rounded to { $rounds } whole rounds.
cuff-at-least-one-round = The cuff has at least one round: { $made }.
swatch-small = A swatch of { $length } is small: count over at least { $least }.
cast-on-unusual = A cast-on of { $loops } loops is unusual, from { $least } to { $most } are common: the toe may look odd.
leg-wide = The leg is { $circumference } around an ankle of { $ankle } and will hang loose: { $cure }.
leg-tight = The leg is { $circumference } around an ankle of { $ankle } and must stretch by { $percent } percent, which is tight: { $cure }.
calf-tight = A leg of { $leg } comes to where yours is { $girth } around; at { $circumference } it must stretch by { $percent } percent, which is tight: { $cure }.
heel-tight = Round the heel the foot is about { $heel }, and the sock gives { $most } at the most, which is tight: { $cure }.
heel-loose = Round the heel the foot is about { $heel }, and the sock is { $circumference } without any stretch: { $cure }.
edge-tight = The edge is { $circumference } around and opens to { $gives }, and { $girth } must go through: { $cure }.
fit-checked = The fit: it stretches by { $ball } percent at the ball, { $heel } round the heel, { $leg } at the top of the leg; the edge by { $edge } over the heel, of { $gives } that it gives.
gauge-mean = The mean of { $counts } counts is { $stitches } stitches to ten centimetres, give or take { $give_or_take }, and { $rounds } rounds, give or take { $rounds_off }.
swatch-unwashed = The swatch was not washed: knitting often changes in the first wash, so wash it and count again if you can.
swatch-flat = The swatch was knitted flat: in the round your stitches may come out tighter or looser, so count the first rounds of the sock too.
washing-changes-stitches-more = Washing drew it together: { $percent } percent more stitches to the width. The washed count is used.
washing-changes-stitches-fewer = Washing let it out: { $percent } percent fewer stitches to the width. The washed count is used.
washing-changes-rounds-more = Washing made it shorter: { $percent } percent more rounds to the height. The washed count is used.
washing-changes-rounds-fewer = Washing made it longer: { $percent } percent fewer rounds to the height. The washed count is used.
flat-differs-stitches-more = In the round you knit tighter than flat: { $percent } percent more stitches. The count in the round is used.
flat-differs-stitches-fewer = In the round you knit looser than flat: { $percent } percent fewer stitches. The count in the round is used.
flat-differs-rounds-more = In the round there are { $percent } percent more rounds than flat. The count in the round is used.
flat-differs-rounds-fewer = In the round there are { $percent } percent fewer rounds than flat. The count in the round is used.
gauge-more-stitches-than-rounds = { CAPITAL($stitches) } stitches to { $rounds } rounds is unusual, rounds are mostly more: check the swatch.
needles-hold-one = On double-pointed needles the socks are knitted one after the other.
practice-size = Practice size: { $stitches } stitches, { $circumference } around, foot { $foot }, leg { $leg }.
practice-ignores = The practice size does not use { $field }.

## Measurements that cannot be knitted

yarn-weight-0 = lace
yarn-weight-1 = super fine
yarn-weight-2 = fine
yarn-weight-3 = light
yarn-weight-4 = medium
yarn-weight-5 = bulky
yarn-weight-6 = super bulky
yarn-weight-7 = jumbo
join-classes = { $before } or { $after }
yarn-class = The yarn is { $classes } by this gauge, for needles of { $thin } to { $thick } millimetres; for socks a size or two thinner.
yarn-class-and-up = The yarn is { $classes } by this gauge, for needles of { $thin } millimetres and up; for socks a size or two thinner.
yarn-needed = The pair takes about { $metres } metres of yarn, { $grams } grams; with a margin have { $buy_metres } metres, { $buy_grams } grams.
yarn-needed-contrast = Of the second colour it takes about { $metres } metres, { $grams } grams; with a margin have { $buy_metres } metres, { $buy_grams } grams.
yarn-assumed = That is at { $metres } metres to a hundred grams, usual for such yarn: read your ball's band.
yarn-enough = { $skeins ->
        [one] One ball will do
       *[other] { CAPITAL($skeins) } balls will do
    }: about { $grams } grams will be left over.
yarn-close = { $skeins ->
        [one] One ball is
       *[other] { CAPITAL($skeins) } balls are
    } only just enough: to be sure, make the leg { $leg }.
yarn-close-foot = { $skeins ->
        [one] One ball is
       *[other] { CAPITAL($skeins) } balls are
    } only just enough: to be sure, have one more.
yarn-short = { $skeins ->
        [one] One ball is
       *[other] { CAPITAL($skeins) } balls are
    } not enough: the yarn will run out at about round { $round } of the { $stage }; a leg of { $leg } is what it allows.
yarn-short-foot = { $skeins ->
        [one] One ball is
       *[other] { CAPITAL($skeins) } balls are
    } not enough: the yarn will run out at about round { $round } of the { $stage }, before there is a leg: have one more.
yarn-halves = One ball serves both socks: knit from its two ends, or weigh it; either sock may take { $grams } grams of it, and its bind-off takes { $reserve }.
foot-missing = The foot length is missing: give it, or a shoe size.
length-out-of-range = { CAPITAL($field) }, { $length }, is not between { $least } and { $most }: measure it again.
gauge-out-of-range = { CAPITAL($field) } of { $gauge } to ten centimetres is not between { $least } and { $most }: count the swatch again.
gauge-zero = { CAPITAL($field) } cannot be zero: count the swatch.
ease-out-of-range = An ease of { $percent } percent is not between { $least } and { $most }: choose one that is.
around-uneven = { CAPITAL($stitches) } stitches around is no multiple of { $multiple }: take { $below } or { $above }.
around-too-few = { CAPITAL($stitches) } stitches around are too few: take at least { $least }.
around-too-many = { CAPITAL($stitches) } stitches around are too many: take at most { $most }.
too-few-stitches = At a gauge of { $gauge } this foot comes to { $stitches } stitches, fewer than { $least }: take finer yarn, or the practice size.
cast-on-unfit = A cast-on of { $loops } loops does not grow into { $stitches } stitches: take { $below } or { $above }.
cast-on-too-few = A cast-on of { $loops } loops is too few: take at least { $least }.
not-toe-up = { at-place }{ CAPITAL($field) } “{ $name }” is none of a sock that begins at the toe: choose from { $choices }.
not-cuff-down = { at-place }{ CAPITAL($field) } “{ $name }” is none of a sock that begins at the cuff: choose from { $choices }.
chart-not-cuff-down = { at-place }From the cuff down no chart is followed: leave it out, or begin at the toe.
cast-on-not-cuff-down = { at-place }From the cuff down all stitches around are cast on, not { $loops }: leave the cast-on out.
cast-on-not-half = A toe of short rows is cast on over one half, { $half } loops of { $stitches } stitches, not { $loops }: take { $half }, or leave it out.
cast-on-too-many = A cast-on of { $loops } loops is too many for { $stitches } stitches: take at most { $most }.
foot-too-short = Toe, gusset and heel turn need { $needed } rounds ({ $toe }, { $gusset } and { $turn }), and the foot has { $there }: { $cure }.
number-out-of-range = { CAPITAL($field) }, { $number }, must be from { $least } to { $most }: choose another number.
needle-out-of-range = A needle of { $millimetres } millimetres is not between { $least } and { $most }: give its thickness, such as 2.5mm.
skein-out-of-range = { CAPITAL($field) }, { $text }, is not between 1 and { $most }: read the ball's band again.
leg-too-short = A leg of { $leg } is too short for a cuff of { $cuff }: make the leg at least { $least }.
cuff-too-short = A cuff of { $cuff } is less than one round: make it at least { $least }.
bind-off-needs-rib = The bind-off called { $name } ends a rib of knit one, purl one, and the cuff called { $cuff } is none: choose the cuff called rib-1x1, or the bind-off called { $better }.
calf-shape-too-high = The last increase for the calf would stand in round { $last } of a leg of { $rounds } rounds: begin lower, or make the leg higher.
calf-shape-uneven = With { $pairs } pairs of increases for the calf the ribbing does not come out: take { $better }.
names-alike = Both socks are called { $name }: give them two names.
shoe-unreadable = “{ $text }” is not a shoe size: write it such as EU 39.
shoe-no-system = “{ $text }” does not say whose shoe size it is: write EU, UK or US before it.
shoe-men-or-women = “{ $text }” is { $men } for men and { $women } for women: say which.
shoe-out-of-range = “{ $text }” is not between { $least } and { $most }: measure the foot instead.

## Plan files and answers that cannot be read

file-unreadable = The plan file cannot be read at line { DIGITS($line) }, column { DIGITS($column) }: { $text }. Mend that line.
file-too-long = The plan file has more than { $most } characters: take out what does not belong there.
file-too-new = The plan file has version { DIGITS($found) }, and this program knows { DIGITS($known) }: use a newer program.
field-unknown = { at-place }There is nothing called “{ $name }” in a plan file: take it out.
field-misspelt = { at-place }“{ $name }” is not known: did you mean “{ $meant }”?
field-missing = { at-place }{ CAPITAL($field) } must be given: add what is missing.
field-not-a-table = { at-place }{ CAPITAL($field) } must be a table of its own: begin it with its name in square brackets.
length-no-unit = { at-place }{ CAPITAL($field) }, “{ $text }”, has no unit: write { $number }cm, { $number }mm or { $number }in.
length-unknown-unit = { at-place }{ CAPITAL($field) }, “{ $text }”: “{ $unit }” is no unit here, use cm, mm or in.
length-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not a length: write a number and its unit, such as 24.5cm.
number-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not a number: write one such as 30 or 30.5.
whole-number-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not a whole number: write one such as 64.
yes-or-no-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is neither true nor false: write one of the two.
text-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not text: write it in quotation marks.
text-empty = { CAPITAL($field) } must not be empty: write something, or leave it out.
two-names-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not two names: give two, such as first and second.
needle-unknown = { at-place }There is no needle “{ $text }”: give its thickness, such as 2.5mm.
needle-ambiguous = { at-place }“{ $text }” is sold as { $thin } and as { $thick } millimetres: give the thickness.
calf-shape-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, cannot be read: write them as pairs = 10, first_round = 50, every = 4, the last two no less than 2.
counts-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, cannot be read: write each as stitches, rounds or both, such as 31 stitches 43 rounds over 10cm.
weight-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not a weight: write a number and g or oz, such as 50g.
yarn-length-unreadable = { at-place }{ CAPITAL($field) }, “{ $text }”, is not a length of yarn: write a number and m or yd, such as 210m.
choice-unknown = { at-place }{ CAPITAL($field) } cannot be “{ $text }”: choose from { $choices }.
at-place = { $where ->
        [none] { "" }
       *[other] { CAPITAL($where) }:{ " " }
    }

## What the proof can find wrong with a plan

cast-on-out-of-order = { at-place }The { $half } of sock { $sock } is cast on out of order: the plan is not to be knitted.
opened-out-of-order = { at-place }The { $half } of the heel of sock { $sock } is opened out of order: the plan is not to be knitted.
heel-rows-wrong = { at-place }The heel has { $found } rows and should have { $wanted }: the plan is not to be knitted.
turn-broken = { at-place }The short row does something that no heel turn does: the plan is not to be knitted.
row-broken = { at-place }The row is made up otherwise than its part asks for: the plan is not to be knitted.
flap-broken = { at-place }The flap row slips and knits in another order than the rows below: the plan is not to be knitted.
row-index-wrong = { at-place }The row is numbered { $found } and should be { $wanted }: the plan is not to be knitted.
stage-wrong = { at-place }The row is in { $found } and should be in { $wanted }: the plan is not to be knitted.
round-number-wrong = { at-place }The round is numbered { $found } and should be { $wanted }: the plan is not to be knitted.
rows-missing = { at-place }Rows of { $stage } are missing: the plan is not to be knitted.
wrong-loops-at-tip = { at-place }The row works the { $half } of sock { $sock }, and the { $at_half } of sock { $at_sock } is at the tip: the plan is not to be knitted.
too-few-loops = { at-place }The { $half } of sock { $sock } has fewer loops than the row works: the plan is not to be knitted.
loops-not-worked = { at-place }On the { $half } of sock { $sock } { $loops } loops are not worked: the plan is not to be knitted.
other-sock-on-needle = { at-place }A sock is cast on while { $loops } loops of sock { $sock } are still on the needle: the plan is not to be knitted.
loops-at-end = { at-place }At the end { $loops } loops are still on the needle: the plan is not to be knitted.
height-off = { at-place }The height comes to { $found }, and the plan says { $wanted }: the plan is not to be knitted.
written-unread = The plan's own pattern cannot be read: it is not to be knitted.
written-otherwise = { at-place }The row is not the one that the pattern tells of: the plan is not to be knitted.
count-wrong = { at-place }There are { $found } loops after the row, and the plan says { $stated }: the plan is not to be knitted.
nothing-to-pass-over = { at-place }Sock { $sock } has no loop to pass over: the plan is not to be knitted.
nothing-kept = { at-place }Only { $loops } loops were kept there to be freed: the plan is not to be knitted.
kept-loops-left = { at-place }Of the loops kept there { $loops } stay behind and would run down: the plan is not to be knitted.
nothing-to-graft-to = { at-place }Sock { $sock } has no loop on the other side to graft to: the plan is not to be knitted.
fastened-too-early = { at-place }It is fastened off with { $loops } loops still there: the plan is not to be knitted.
yarn-elsewhere = { at-place }Yarn { $yarn } is not where sock { $sock } is worked: the plan is not to be knitted.
yarn-of-other-sock = { at-place }Sock { $sock } is worked with yarn { $yarn }: the plan is not to be knitted.
wrong-side = { at-place }The side facing is { $found } and should be { $wanted }: the plan is not to be knitted.
wrong-half = { at-place }The half is the { $found } and should be the { $wanted }: the plan is not to be knitted.
turn-missing = { at-place }A turn is missing: the plan is not to be knitted.
turn-not-due = { at-place }There is a turn too many: the plan is not to be knitted.
wrap-not-lifted = { at-place }The wraps of { $loops } loops are never lifted: the plan is not to be knitted.
no-wrap-there = { at-place }{ CAPITAL($loops) } loops have no wrap to lift: the plan is not to be knitted.
double-not-joined = { at-place }{ CAPITAL($loops) } double stitches are not worked as one: the plan is not to be knitted.
no-double-there = { at-place }{ CAPITAL($loops) } loops are no double stitches: the plan is not to be knitted.
mark-misplaced = { at-place }The operation { $op } marks a stitch where no short row turns: the plan is not to be knitted.
turned-at-wrong-loop = { at-place }The row turns at loop { $found } and should at { $wanted }: the plan is not to be knitted.
flap-join-wrong = { at-place }The flap row ends with { $found } and should with { $wanted }: the plan is not to be knitted.
increases-not-mirrored = { at-place }The increases do not lean away from each other: the plan is not to be knitted.
op-out-of-place = { at-place }The operation { $op } has no place in { $stage }: the plan is not to be knitted.
corner-strands-wrong = { at-place }The corner strands are not worked at the corners: the plan is not to be knitted.
rib-broken = { at-place }The ribbing does not stand above the ribbing below: the plan is not to be knitted.
socks-differ = { at-place }The row differs from that of the other sock, { $other_row }: the plan is not to be knitted.
needles-wrong = { at-place }The needles hold { $found } and should hold { $wanted }: the plan is not to be knitted.
act-missing = { at-place }It lacks “{ $act }”: the plan is not to be knitted.
act-not-due = { at-place }“{ CAPITAL($act) }” is not due: the plan is not to be knitted.
acts-out-of-order = { at-place }“{ CAPITAL($act) }” comes out of order: the plan is not to be knitted.
stated-wrong = { at-place }The plan says { $name } is { $stated }, and its rows give { $found }: the plan is not to be knitted.
circumference-off = { at-place }The rows make { $found } around, and { $wanted } is wanted: the plan is not to be knitted.
foot-length-off = { at-place }The rows make a foot of { $found }, and { $wanted } is wanted: the plan is not to be knitted.
leg-length-off = { at-place }The rows make a leg of { $found }, and { $wanted } is wanted: the plan is not to be knitted.

## Sound check

welcome = Hello. I call the rounds of a pair of socks, and you say “next” when a step is done.
    .terse = Hello.
say-next = Please say: next.
sound-fine = I hear you well.
too-quiet = I can hardly hear you: come closer to the microphone, or turn it up.
too-loud = That is too loud for the microphone: move back, or turn it down.
too-noisy = It is too noisy here: turn off what makes the noise, or come closer to the microphone.
heard-nothing = I heard nothing: is the microphone on?
heard-otherwise = I heard “{ $said }”.
sound-check-skipped = The sound check is left out.
microphone-tried = I try another microphone: { $name }.
no-ears = I cannot hear: use the keys, space means next.
no-mouth = I cannot speak: read the lines.

## Teaching

teach-begin = I learn how you say { $words ->
    [one] one command
   *[other] { SPELLED($words) } commands
 }, each three times. Only a sketch of the sound is kept, no recording.
teach-say = Say: { $text }.
teach-again = Once more: { $text }.
teach-unclear = That was too short or too long. Say only: { $text }.
teach-unlike = That sounded like something else. Say: { $text }.
teach-anew = Let us begin this one anew. Say: { $text }.
teach-done = I know { $words ->
    [one] one command
   *[other] { SPELLED($words) } commands
 } by your voice now. They are kept in { $path }.
teach-nothing = Nothing was learnt: each command must be said three times.
teach-forgotten = What I learnt of your voice is deleted: { $path }.
teach-none = There is nothing to forget: I have not learnt your voice.
taught-unreadable = What I learnt of your voice cannot be read: { $file }. I listen without it; teach me anew with “roundcaller listen --learn”.
taught-unwritable = What I learnt of your voice cannot be kept in { $file }: make room there, or allow me to write there.

## Listening

did-you-mean = Did you mean: { $said }?
which-number = { CAPITAL(SPELLED($first)) }, or { SPELLED($second) }?
listening = I am listening.
listening-again = Listening again.
    .terse = Listening.
listening-paused = Not listening. Say “listen again” when you want me.
    .terse = Not listening.
attention-on = Now say “{ $word }” before each command.
attention-off = Commands count by themselves again.
attending = Yes?
louder = Louder.
loudest = This is as loud as I can.
softer = Softer.
softest = This is as soft as I can.
faster = Faster.
fastest = This is as fast as I can.
slower = Slower.
slowest = This is as slow as I can.
voice-only = Voice only.
lines-only = Lines only.
voice-and-lines = Voice and lines.
help = Say “next” when a step is done. Ask “where am I”, “how many”, “how far”, “what comes after”, or “how do I do that”. Say “undo” to take back the last command, “again” to hear it again, “I have” and a number to check your count, “back two rounds” to go back, “stop for today” to end.
    .terse = Next, undo, again, where am I, how many, how far, what comes after, how do I do that, I have and a number, back and a number of rounds, stop for today.
    .learner = Say “next” when a step is done, and I call the following one. Ask “where am I” for the sock, the half and the counts; “how many” for the stitches; “how far” for the rounds to go; “what comes after” for the step to come; “how do I do that” for how it is worked. Say “undo” to take back the last command, “redo” to take back the undo, “again” to hear it again. Say “I have” and a number to check your count. Say “back two rounds” or “ripped back to the toe” when you pulled out stitches. Say “finer” for smaller steps, “coarser” for larger ones, “mark” to leave a note here, “pause listening” before you talk, and “stop for today” to end.
help-keys = Keys: space is next, U undo, R redo, A again, W where am I, H how many, F how far, C what comes after, the question mark help, Q stop for today.
nothing-said-yet = I have said nothing yet.

## Time to go

time-to-go = { CAPITAL($in_stage) } to go in this part, { $in_pair } in the pair.
    .terse = { CAPITAL($in_stage) } here, { $in_pair } in the pair.
time-about = about { $duration }
time-between = { $least } to { $most }
duration-few-minutes = a few minutes
duration-minutes = { $minutes ->
        [one] one minute
       *[other] { $minutes } minutes
    }
duration-half-hour = half an hour
duration-hours = { $hours ->
        [one] one hour
       *[other] { $hours } hours
    }
duration-hours-and-half = { $hours } and a half hours

## Settings

settings-are-in = These settings are kept in { $path }.
microphone-is = Microphone: { $name }.
microphone-usual = Microphone: the system's own.
speaker-is = Speaker: { $name }.
speaker-usual = Speaker: the system's own.
voice-is = Voice: { $name }.
voice-usual = Voice: the usual one.
rate-is = Rate: { DIGITS($words) } words a minute.
loudness-is = Loudness: { DIGITS($percent) } percent.
wording-terse = Short sentences.
wording-plain = Plain sentences.
wording-learner = Sentences for a learner.
while-speaking-wait = Commands wait until it has spoken.
while-speaking-headphones = Commands cut it short: keep the voice in your headphones.
while-speaking-loudspeaker = While it speaks it hears “next”, “again” and “stop”.
rests-are-on = A rest is offered after { DIGITS($minutes) } minutes.
rests-are-off = No rests are offered.
careful-on = Where I am unsure what I heard, I ask a second opinion.
careful-off = No second opinion is asked on what I hear.
language-is = Language: { $name }.
microphone-here = A microphone here: { $name }.
speaker-here = A speaker here: { $name }.
voice-here = A voice here: { $name }.
voices-besides = And { DIGITS($count) } voices of other languages: add --all-voices to see them.
microphone-gone = The microphone { $name } is not here now: I use the system's own.
speaker-gone = The speaker { $name } is not here now: I use the system's own.
voice-gone = The voice { $name } is not here now: I use the usual one.
second-opinion-gone = For a second opinion { $what } is needed, which is not here now: I listen without it. Type “{ $cure }”, or give --no-careful.
second-opinion-slow = A second opinion would take { DIGITS($milliseconds) } milliseconds on this machine, and more than { DIGITS($most) } is too long to wait: I listen without it.
second-opinion-foreign = A second opinion can be had on English only: I listen without it.
settings-damaged = The settings in { $file } are damaged and were put aside as { $aside }: the usual ones are used, choose yours again.
settings-unreadable = The settings in { $file } cannot be read: the usual ones are used, change the file's rights.
settings-unwritable = The settings cannot be written to { $file }: nothing will be remembered, change its rights.

## What a check of a journal finds

check-file = The database is damaged ({ $found }): save what can be read with “roundcaller journal rescue”.
check-gap = Event { DIGITS($seq) } is missing: save the others with “roundcaller journal rescue”.
check-event = Event { DIGITS($seq) } cannot be read: save the others with “roundcaller journal rescue”.
check-plan = The plan { $plan } was changed since it was written down: do not knit on from it.
check-plan-missing = Event { DIGITS($seq) } needs the plan { $plan }, which is missing: begin again from the plan file.
check-place = Event { DIGITS($seq) } is at a place that its plan does not have: undo it, or say where you are.
check-not-begun = Event { DIGITS($seq) } knits on the pair “{ $name }”, which was never begun: begin it again.
check-replay = Event { DIGITS($seq) } does not follow from those before it: say where you are.

## Rests and hands

rest-due = { $minutes ->
        [one] One minute of knitting without a rest: put it down for five.
       *[other] { CAPITAL($minutes) } minutes of knitting without a rest: put it down for five.
    }
    .terse = { CAPITAL($minutes) } minutes: time for a rest.
    .learner = { CAPITAL($minutes) } minutes of knitting without a rest: put it down for five. Say “take a rest”, or “remind me later”.
resting = Rest well. Your place is written down; say “my rest is over” when you go on.
    .terse = Rest well.
no-rest-to-end = You were not resting.
rest-snoozed = { $minutes ->
        [0] I remind you at the end of the round.
        [one] I remind you in one minute, at the end of a round.
       *[other] I remind you in { $minutes } minutes, at the end of a round.
    }
no-rests-today = No more rests today. Stop when your hands hurt.
    .terse = No more rests today.
rests-again = A rest is offered after { $minutes } minutes again.
rest-over = { $minutes ->
        [0] A short rest.
        [one] One minute of rest.
       *[other] { CAPITAL($minutes) } minutes of rest.
    }
hand-care = Stop when your hands hurt. If pain, numbness or tingling stays or comes back, ask a doctor or a physiotherapist: I cannot judge it.
    .terse = If your hands hurt, stop, and ask a doctor or a physiotherapist.

## Coming and going

resume-or-new = Go on with { $name }? Say no for a new pair.
resume-or-another = Go on with { $name }? Say no for another pair, or a new one.
which-pair = Which pair: { $pairs }? Say its number, or “skip” for a new pair.
pair-choice = { $number }, { $name }
pair-begins = { CAPITAL($name) } begins.
goodbye = Goodbye.
interrupted = Interrupted. Everything is written down.
plan-edited = The plan file of { $name } was edited since the pair was begun: I go on with the plan as it was.
plan-taken = The plan file of { $name } was edited since the pair was begun, and nothing knitted so far differs: I go on with the new one.
plan-taken-measured = The plan file of { $name } was edited since the pair was begun, and nothing knitted so far differs: I go on with the new one, in the rounds that you measured.
plan-taken-unmeasured = The plan file of { $name } was edited since the pair was begun, and nothing knitted so far differs: I go on with the new one, without what you measured.
plan-edited-ask = The plan file of { $name } was edited since the pair was begun, and nothing knitted so far differs. Go on with the plan as it was?
plan-edited-ask-measured = The plan file of { $name } was edited since the pair was begun, and nothing knitted so far differs; the rounds that you measured stay in it. Go on with the plan as it was?
plan-edited-ask-unmeasured = The plan file of { $name } was edited since the pair was begun, and nothing knitted so far differs; but what you measured is lost in it. Go on with the plan as it was?
plan-stays = I go on with the plan as it was.
plan-lost = The journal does not hold the plan of { $name }: begin it again from its plan file.
plan-written = The plan is written to { $path }.
piece-summary = { $around ->
        [one] One stitch around
       *[other] { CAPITAL($around) } stitches around
    } at the widest, { $circumference }; { $height } high.
pair-summary = { $around ->
        [one] One stitch around
       *[other] { CAPITAL($around) } stitches around
    }, { $circumference }, give or take { $circumference_off }; foot { $foot }, give or take { $foot_off }; leg { $leg }, give or take { $leg_off }.
keep-this = Shall I keep this?

## A new pair, question by question

new-pair = A new pair. I ask, you answer; say “skip” for what you do not know, “help” for how to measure it, “undo” to change your last answer.
ask-practice = Do you want a small practice pair, for any yarn?
ask-foot-length = What is the foot length, from heel to longest toe?
    .terse = Foot length?
    .learner = What is the foot length? Stand on a sheet of paper, and measure from the heel to the longest toe.
ask-ball = How far is it around the ball of the foot?
    .terse = Around the ball?
    .learner = How far is it around the ball of the foot, the widest place behind the toes?
ask-ankle = How far is it around the ankle, at its narrowest?
    .terse = Around the ankle?
ask-leg = How high shall the leg be, cuff included?
    .terse = Leg height?
ask-cuff = How deep shall the cuff be?
    .terse = Cuff depth?
ask-stitches = How many stitches of the swatch are ten centimetres wide?
    .terse = Stitches to ten centimetres?
    .learner = How many stitches of the washed swatch are ten centimetres wide? Half stitches count.
ask-rounds = How many rounds of the swatch are ten centimetres high?
    .terse = Rounds to ten centimetres?
ask-heel-diagonal = How far is it from the front of the ankle round the back of the heel?
    .terse = Round the heel?
ask-calf = How far is it around the calf, at its widest?
    .terse = Around the calf?
ask-skein = How many grams does one ball weigh?
    .terse = Grams to a ball?
ask-skein-length = How many metres of yarn are on one ball, by its band?
    .terse = Metres to a ball?
ask-skeins = How many balls have you, for both socks together?
    .terse = How many balls?
ask-unit = { CAPITAL($number) } what: centimetres or inches?
answer-length = { CAPITAL($length) }.
answer-count = { CAPITAL($number) }.
answer-skipped = I shall estimate it.
answer-needed = I need this one: it cannot be estimated.
not-yes-or-no = Please say yes or no.
ask-earlier = { CAPITAL($question) } It was { $answer }; say “next” to leave it so.
    .terse = { CAPITAL($question) } It was { $answer }.
told-length = { $length }
told-count = { $number }
told-skipped = left out
ask-all-again = Then I ask again.

# How the tape is laid, how a swatch is counted: common practice.

interview-help = { CAPITAL($answer) } Say “skip” for what you do not know, “again” to hear the question, “undo” to change your last answer.
    .terse = { CAPITAL($answer) }
help-practice = A practice pair has the fewest stitches that still show every step: say yes for it, no for socks that fit a foot.
help-foot-length = Stand with your heel against a wall, and measure along the floor to the tip of the longest toe: say the number and centimetres or inches.
help-ball = Stand, and lay the tape around the foot where it is widest, behind the toes, snug but not tight.
help-ankle = Lay the tape around the leg above the ankle bones, where it is narrowest.
help-heel-diagonal = Lay the tape around the foot from the front of the ankle, where it bends, over the back corner of the heel and up to the front again.
help-calf = Stand, and lay the tape around the calf where it is widest.
help-leg = Measure from the top of the heel up to where the sock shall end.
help-cuff = That is the ribbing at the top; four centimetres are usual.
help-stitches = Lay the washed swatch flat, and count the stitches on ten centimetres in its middle; halves count. Without a swatch, knit one of some fifteen centimetres each way first, in the round if you can, wash it and let it dry.
help-rounds = Lay the washed swatch flat, and count the rounds one above the other on ten centimetres in its middle; halves count.
help-skein = It is printed on the ball’s band; or weigh a whole ball.
help-skein-length = It is printed on the ball’s band, beside the weight.
help-skeins = Count the whole balls of this yarn.

## Lines of the command line

stage-lines = { CAPITAL($stage) }: { $rounds ->
        [one] 1 round
       *[other] { DIGITS($rounds) } rounds
    }, { DIGITS($rows) } rows.
plan-fine = { CAPITAL($name) }: { DIGITS($rows) } rows, proven loop by loop.
journal-fine = { $path }: { DIGITS($events) } events, all of them readable.
journal-salvaged = { DIGITS($events) } events were saved into { $path }.
model-listed = { $name }; { $language }; { $purpose }; { $licence }; { $size }; { $here }
model-size = { DIGITS($megabytes) } MB
model-size-unknown = size not known
model-here = here: { $path }
model-not-here = not here: roundcaller models fetch { $name }
model-fetching = { $name }: { DIGITS($percent) } percent.
model-fetched = { $name }: fetched and verified.
model-fine = { $name }: verified.
demo-same = All { $commands } commands were heard as they were said.
demo-differs = Said “{ $said }”, heard “{ $heard }”.

## Files, options, surroundings

path-missing = There is no file { $file }: check the name.
path-not-text = { $file } is not a text file: give a plan file.
path-taken = There is a file { $file } already: choose another name.
path-unreadable = { $file } cannot be read ({ $reason }): check the name and your right to read it.
path-unwritable = { $file } cannot be written ({ $reason }): choose another place, or make room.
language-unknown = There is no language “{ $language }”: choose from { $known }.
language-broken = The language “{ $language }” cannot be read, in { $file }: { $what }. Mend that file or choose another language.
option-unknown = There is no option { $option }: see “{ $command } --help”.
option-missing = { $option } must be given: see “{ $command } --help”.
option-empty = { $option } needs a value after it: see “{ $command } --help”.
option-choice = { $option } takes one of { $choices }.
option-range = { $option } takes a whole number from { DIGITS($least) } to { DIGITS($most) }.
option-number = { $option } takes a whole number.
option-unreadable = { $option } cannot be read: see “{ $command } --help”.
argument-missing = { $argument } is missing: see “{ $command } --help”.
argument-too-many = “{ $text }” is too much after “{ $command }”: put names with blanks in quotation marks.
verb-unknown = “{ $command }” has no “{ $text }”: choose from { $verbs }.
verb-missing = “{ $command }” needs one of these after it: { $verbs }.
usage-unclear = That cannot be understood: see “{ $command } --help”.
typed-from-elsewhere = With --recogniser typed words come from standard input: leave --from out.
model-without-vosk = --model is for --recogniser vosk: give both, or neither.
speak-to-what = --to takes speaker, none or a file such as answers.wav, not “{ $text }”.
speak-to-itself = --to must not be the file of --from: choose another name.
show-what = FILE is missing: name a plan file, or give --schema.
no-such-take = There is no take { DIGITS($take) }: choose from 1 to { DIGITS($takes) }.
listen-to-what = Say what to listen to: one or more sound files, or --mic.
option-before-verb = { $option } belongs after { $verb }: write it there.
nothing-to-resume = There is no pair to go on with: give a plan file.
no-pair-named = There is no pair called “{ $name }”: there is { $names }.
packages-mixed-up = Another program's “{ $package }” is in the way, at { $path }: install this program in an environment of its own.
microphone-lost = The microphone { $name } is gone: plug it in again, or use the keys. Your place is written down.
speaker-lost = The speaker { $name } is gone: read the lines, or plug it in again. Your place is written down.
system-refused = The system refused ({ $reason }): see to that and start again, what was written down is safe.
unexpected = Something went wrong that should not ({ $reason }): run again with --debug to see more. Your place is written down.

## Sound

no-portaudio = The PortAudio library is missing: install it (on Debian: apt install libportaudio2), or use keys and sound files.
no-microphone = There is no microphone: plug one in, or use --from keys.
no-speaker = There is no speaker: plug one in, or use --to none.
no-such-microphone = There is no microphone named “{ $wanted }”: there is { $found }.
no-such-speaker = There is no speaker named “{ $wanted }”: there is { $found }.
device-refused = The sound device { $name } does not open: close other programs that use it, or choose another.
device-lost = The sound device { $name } is gone: plug it in again, or choose another. Your place is written down.
no-voice = There is no voice: install espeak-ng (on Debian: apt install espeak-ng), or use --to none.
no-echo-canceller = To hear you over the loudspeaker the echo canceller is needed: run pip install "roundcaller[loudspeaker]", or choose --while-speaking wait.
no-such-voice = There is no voice named “{ $wanted }”: there is { $found }.
several-microphones = Several microphones are meant by “{ $wanted }”, { $found }: write more of the name.
several-speakers = Several speakers are meant by “{ $wanted }”, { $found }: write more of the name.
several-voices = Several voices are meant by “{ $wanted }”, { $found }: write more of the name.
wav-missing = There is no sound file { $path }: check the name.
wav-unreadable = { $path } is not a sound file that can be read: give a WAV file.
wav-empty = There is no sound in { $path }: give another file.
wav-unsupported = { $path } is of a kind that cannot be read ({ $encoding }): save it as a WAV of 16-bit samples, 16000 a second.
wav-in-the-way = { $path } is there already and is no sound file: it was not touched, choose another name.
wav-unwritable = { $path } cannot be written: choose another place, or make room on the disk.
speech-failed = This could not be spoken: “{ $text }”. Read the lines.

## Models

model-unknown = There is no model “{ $name }”: choose from { $names }.
model-missing = The model { $name } is not on this machine: type “{ $cure }”.
model-broken = The model { $name } is damaged, at { $what }: type “{ $cure }”.
checksum-wrong = The model { $name } came with another checksum than recorded ({ $actual } instead of { $expected }) and was removed: type “{ $cure }”.
checksum-unknown = No checksum is recorded for the model { $name }: type “{ $cure }” to trust what comes.
models-offline = The model { $name } cannot be fetched, { $host } is not reached: go online and try again, or use --recogniser pocketsphinx, which needs no fetching.
models-server-refused = The model { $name } was not handed out, { $url } answered { $status }: try again later.
fetch-broken-off = The model { $name } broke off after { $received } of { $expected } bytes, which are kept: type “{ $cure }” to go on.
fetch-size-wrong = The model { $name } has { $actual } bytes instead of { $expected }: it was not kept, try again later.
archive-unsafe = The model { $name } holds an unsafe entry, { $entry }: it was not unpacked, do not use it.
models-no-room = The model { $name } needs { $needed_mb } MB in { $folder }: make room and try again.
models-folder-closed = The folder for models, { $folder }, cannot be written ({ $reason }): change its rights.
recogniser-unavailable = The recogniser { $recogniser } is not usable here: { $cure }.
second-opinion-missing = For a second opinion { $what } is needed, which is not on this machine: type “{ $cure }”, or leave --careful out.
words-unknown = The recogniser { $recogniser } can never hear these words: { $words }. Give their pronunciation in phrases.toml, or say it otherwise.
rate-unusable = Sound at { $rate_hz } samples a second cannot be used: choose between { $lowest_hz } and { $highest_hz }.

## Journal

journal-missing = There is no journal { $file }: check the name.
journal-in-use = The journal { $file } is in use by another program: close that one first.
journal-moved = Another program wrote to the journal { $file }: nothing was written here, start again.
journal-newer = The journal { $file } was written by a newer program (version { $version }, this one knows { $known }): use the newer one.
journal-foreign = { $file } is not a journal: choose another file; it was not touched.
journal-damaged = The journal { $file } is damaged; { $readable } events can be read: save them with “roundcaller journal rescue”.
journal-unwritable = The journal { $file } cannot be written: change its rights, or choose another place.
pair-unknown = The journal { $file } has no pair called “{ $name }”: check the name.
disk-full = The disk is full: nothing was written to { $file } and you are where you were, make room and say it again.
disk-failed = The disk failed: nothing was written to { $file } and you are where you were, copy the file elsewhere.

## Patterns written by hand

written-no-pattern = { at-place }There are no rounds: write them between three quotes, as pattern = """ … """.
written-head-wrong = { at-place }The table plan is not as it was printed, at { $text }: print it anew, or put it back.
written-field-wrong = { at-place }“{ $text }” cannot stand at { $name }: put it right.
written-needles = { at-place }Needles cannot be “{ $text }”: choose from { $choices }.
written-pair-needs-halves = { at-place }Two pieces at once lie in halves: write needles = "{ $choices }".
written-size-needed = { at-place }There are several sizes: add a line size with one of { $choices }.
written-size-unknown = { at-place }There is no size “{ $text }”: choose from { $choices }.
written-swatch-needed = { at-place }{ CAPITAL($name) } must be a number above nothing: add it to the table swatch.
written-not-a-multiple = { CAPITAL($stitches) } cast on are no multiple of { $multiple }: change either.
written-not-understood = { at-place }“{ $text }” is not understood here: use the usual abbreviations.
written-sizes-differ = { at-place }There are { $found } numbers for { $wanted ->
        [one] one size
       *[other] { $wanted } sizes
    }: give one for each.
written-star-alone = { at-place }This star has no “rep from *” after it: add it.
written-how-often = { at-place }How often is this worked: add a number of times, or “to end”.
written-too-deep = { at-place }Repeats stand inside one another more than { $most } deep: write them out.
written-round-empty = { at-place }Nothing is worked in this round: say what.
written-nothing-same = { at-place }There is nothing before this to be worked the same: write the rows out.
written-too-few = { at-place }Round { $round } uses { $used } of { $stitches } stitches: work them all.
written-too-many = { at-place }Round { $round } uses { $used } of { $stitches } stitches: take some out.
written-repeat-uneven = { at-place }Round { $round } uses { $used } of { $stitches } stitches: the repeat takes { $width } and does not come out.
written-count-differs = { at-place }The pattern says { $stated } stitches, and there are { $found }: put one right.
written-never-ends = { at-place }This takes no stitch, and so never comes to the end: say how often.
written-too-long = { at-place }Round { $round } is longer than { $most }: say how often in smaller numbers.
written-round-twice = { at-place }Round { $round } is told twice: take one out.
written-round-missing = { at-place }Round { $following } is told, but round { $round } is missing: add it.
written-no-such-round = { at-place }There is no round { $round } to repeat: tell it before.
written-half-missing = { at-place }Round { $round } does not tell the { $half }: add it.
written-half-twice = { at-place }Round { $round } tells a half twice, or one that is not there: take it out.
written-across-halves = { at-place }In round { $round } this takes stitches of both halves: tell front and back by themselves.
written-no-marker = { at-place }In round { $round } there is no marker here: place one before.
written-marker-in-the-way = { at-place }In round { $round } a marker hangs between the stitches that this takes: take it out first.
written-act-in-the-way = { at-place }“{ $act }” cannot stand in the middle of a round: put it before or after.
written-no-chart = { at-place }There is no chart “{ $name }”: add it to the table charts{ $names ->
        [none] { "" }
       *[other] , or use { $names }
    }.
chart-empty = { at-place }Chart { $name } has no rows, or too many: draw it between three quotes, a line a row.
chart-symbol-unknown = { at-place }Chart { $name }, row { $row } from the bottom: “{ $symbol }” is no symbol, use one of the list.
chart-brackets = { at-place }Chart { $name }, row { $row } from the bottom: put one [ and one ] around what repeats.
chart-rows-differ = { at-place }Chart { $name }, row { $row } from the bottom takes { $found } stitches, and the first row { $wanted }: make all alike.
chart-count-changes = { at-place }Chart { $name }, row { $row } from the bottom makes { $found } stitches of { $wanted }: let each row keep its count.
chart-too-wide = { at-place }Chart { $name } is { $found } stitches wide, and the front has { $wanted }: draw it narrower, or take more stitches around.
chart-edges-around = { at-place }Chart { $name } lies all around, and so has no edges: take the brackets out.
chart-on-calf = { at-place }Chart { $name } lies all around the leg, which therefore cannot widen: lay it on the front, or choose the straight leg.
chart-uneven = { at-place }Chart { $name } comes out over a multiple of { $multiple }, not over { $stitches }: take { $below } or { $above } around.
chart-wish-wrong = { at-place }Chart { $name } needs rows, on = "front" or "around", and parts "foot" or "leg": put it right.
chart-row-wrong = { at-place }The row does not follow the chart where it should: the plan is not to be knitted.
chart-not-followed = { at-place }The row is not row { $row } of its chart: the plan is not to be knitted.
