# A language for tests: parts of the sock come before the sock, the whole before the part, and three plural forms.

join = { $before }, { $after }
join-notes = { $before } { $after }
join-how = { $before }. { $after }
join-heels = { $before } { $after }

stitches = { $count ->
        [one] oczko
        [few] oczka
       *[other] oczek
    }
rounds-word = { $rounds ->
        [one] okrążenie
        [few] okrążenia
       *[other] okrążeń
    }
length-cm = { $tenths ->
        [0] { $whole ->
            [one] jeden centymetr
            [few] { $whole } centymetry
           *[other] { $whole } centymetrów
        }
       *[other] { $whole } przecinek { $tenths } centymetra
    }
length-in = { $quarters ->
        [0] { $whole ->
            [one] jeden cal
            [few] { $whole } cale
           *[other] { $whole } cali
        }
        [1] { $whole } i ćwierć cala
        [2] { $whole } i pół cala
       *[other] { $whole } i trzy czwarte cala
    }
times = { $times ->
        [1] { "" }
       *[other] { " " }{ $times } razy
    }
at-place = { $where ->
        [none] { "" }
       *[other] { CAPITAL($where) }:{ " " }
    }
in-stage = { CAPITAL($stage) }, z { AS($of, form: "genitive") } okrążenie { $round }

stage-cast-on = nabieranie
    .in = nabieraniu
stage-toe = palce
    .in = palcach
stage-foot = stopa
    .in = stopie
stage-gusset = klin
    .in = klinie
stage-heel-turn = obrót pięty
    .in = obrocie pięty
stage-heel-flap = płat pięty
    .in = płacie pięty
stage-heel = pięta
    .in = pięcie
stage-leg = nogawka
    .in = nogawce
stage-cuff = ściągacz
    .in = ściągaczu
stage-bind-off = zakańczanie
    .in = zakańczaniu
stage-brim = brzeg
    .in = brzegu
stage-body = główna część
    .in = głównej części
stage-crown = denko
    .in = denku
stage-hand = dłoń
    .in = dłoni
stage-sleeve = rękaw
    .in = rękawie
stage-top = czubek
    .in = czubku
half-front = przód
half-back = tył
half-sole = strona podeszwy
half-leg = strona nogawki
sock-first = pierwsza skarpetka
    .of = pierwszej skarpetki
sock-second = druga skarpetka
    .of = drugiej skarpetki
piece-first = pierwsza część
    .of = pierwszej części
piece-second = druga część
    .of = drugiej części
sock-named = { $name }
    .of = skarpetki { $name }
grain-group = po grupie
grain-half = po połowie
grain-needle = po drucie
grain-side = po stronie
grain-round = po okrążeniu
grain-follow = jak każe robota
sock-both = obie skarpetki
    .of = obu skarpetek
where-half = { $half } { AS($sock, form: "of") }
where-piece = { $sock }
where-one-half = { $half }
where-heel-row = rząd { $row } { AS($sock, form: "of") }
where-side = { $half ->
        [half-front] oba przody
        [half-sole] obie strony podeszwy
        [half-leg] obie strony nogawki
       *[half-back] oba tyły
    }
where-round = z { AS($of, form: "genitive") } okrążenie { $round }
where-sock-round = { $sock }, z { AS($of, form: "genitive") } okrążenie { $round }
sock-ahead = { $stage }, z { AS($of, form: "genitive") } okrążenie { $round }: naprzód jest { $sock }
sock-finished = { $sock } gotowa
where-rest-of-round = z { AS($of, form: "genitive") } reszta okrążenia { $round }

op-co = nabierz { $times }
op-k = { $times } na prawo
op-p = { $times } na lewo
op-ktbl = { $times } na prawo przekręcone
op-ptbl = { $times } na lewo przekręcone
op-sl-wyib = zdejmij { $times }
op-sl-wyif = zdejmij { $times } z nitką z przodu
op-kfb = dwa z jednego na prawo{ times }
op-pfb = dwa z jednego na lewo{ times }
op-m1l = dodaj lewe{ times }
op-m1r = dodaj prawe{ times }
op-lifted-l = dodaj z dołu lewe{ times }
op-lifted-r = dodaj z dołu prawe{ times }
op-yo = narzut{ times }
op-k2tog = dwa razem na prawo{ times }
op-ssk = dwa razem na prawo za tylne{ times }
op-p2tog = dwa razem na lewo{ times }
op-ssp = dwa razem na lewo za tylne{ times }
op-k3tog = trzy razem na prawo{ times }
op-sssk = trzy razem na prawo za tylne{ times }
op-s2kp2 = trzy w jedno środkowe{ times }
op-wrap-turn = owiń następne
op-ds = podwójne oczko
op-twin = bliźniacze oczko
op-bo = zakończ { $times }
op-fasten = przeciągnij nitkę
op-graft = zszyj { $times }
op-three-needle = zakończ { $times } z obu drutów razem
op-k2tog-strand = z nitką z rogu dwa razem na prawo
op-ssk-strand = z nitką z rogu dwa razem za tylne
op-yo-bo = zakończ z narzutem { $times }
op-sew-bo = zakończ igłą { $times }
op-skp = zdejmij jedno, jedno na prawo i przełóż{ times }
op-sk2p = zdejmij jedno, dwa razem na prawo i przełóż{ times }
op-p3tog = trzy razem na lewo{ times }
op-place-marker = zawieś znacznik między oczkami
op-slip-marker = przełóż znacznik
op-remove-marker = zdejmij znacznik
op-gather = przeciągnij ogonek przez { $times }
op-waste = pomocniczą nitką { $times } i przesuń z powrotem
op-thread = przewlecz nitkę przez { $times }
op-co-waste = nabierz { $times } na pomocniczą nitkę
op-free = na drut { $times } uwolnione
op-pick-up-k = nabierz { $times } z brzegu pięty
op-pick-up = podnieś { $times } z rogu
op-graft-rib = zszyj parami { $times }
with-wraps = z owinięciami { $work }
with-doubles = podwójne jako jedno { $work }
repeat = { $times ->
        [1] { $work }
       *[other] { $work }, i tak { $times } razy
    }
work-cast-on = nabieranie
work-plain = gładko
work-increase = dodawanie
work-decrease = ujmowanie
work-narrow = ujmowanie przy obu brzegach
work-closing = zamykanie rogów
work-increase-left-first = dodawanie, najpierw lewe
work-increase-kfb = dodawanie z przodu i z tyłu
work-increase-lifted = dodawanie podnoszone
work-increase-one-edge = dodawanie na jednym brzegu
work-increase-centre = dodawanie na środku
work-decrease-centre = ujmowanie na środku
work-open-heel = oczka pięty na drut
work-keep-heel = zachowanie oczek pięty
work-graft = zszywanie
work-three-needle = zakończenie obu połówek razem
work-gather = ściągnięcie palców
work-pick-up = nabieranie z brzegu
work-holes = dziurki
work-slipped = co drugie przełożone
work-rib = ściągacz
work-bind-off = zakańczanie
work-mixed = po oczku
on-half = { $work }: { $half }
chart-row = z { AS($of, form: "genitive") } rząd schematu { $row }
in-main = { $times } główną
in-contrast = { $times } kontrastową
in-yarn = { $name } { $times }
work-in-main = główną { $work }
work-in-contrast = kontrastową { $work }
work-in-yarn = { $name }: { $work }

act-prepare-the-tips = złóż oba końce drutów
act-cast-on-loosely = nabieraj luźno, na oba druty naraz
act-secure-the-tail = przytrzymaj ogonek
act-slide-along = przesuń te oczka dalej
act-draw-the-back-tip = wysuń tylny drut
act-join-in-the-round = połącz w okrążenie, bez skręcenia
act-pull-out-the-waste-yarn = wyciągnij pomocniczą nitkę
act-snip-the-heel-open = przetnij piętę
act-join-the-yarn = dołącz nitkę
act-turn-inside-out = wywróć skarpetkę na lewą stronę
act-take-the-first-needle = weź pierwszy drut
act-take-the-second-needle = weź drugi drut
act-bring-the-waiting-loop = przełóż czekające oczko
act-put-it-on-one-needle = tył na jeden drut
act-slip-the-rest-over = resztę na następny drut
act-take-the-next-needle = następny drut
act-sew-the-hem-down = przyszyj podwinięcie
act-change-yarn = zmień nitkę
act-snug = ściągnij
act-pull-the-tail = pociągnij ogonek
act-marker = zawieś znacznik
act-lifeline = wciągnij nitkę ratunkową
act-turn-clockwise = obróć w prawo
act-turn-anticlockwise = obróć w lewo
act-turn = obróć
act-cut = utnij nitkę
act-cut-a-long-tail = utnij długi ogonek
act-weave-in = wszyj końce
act-wash = wypierz i wysusz
act-measure-foot = zmierz stopę: { $due }
act-measure-leg = zmierz nogawkę: { $due }
act-try-on-foot = przymierz, stopa ma mieć { $due }
act-measure-height = zmierz wysokość: { $due }
act-try-on-height = przymierz, wysokość ma mieć { $due }
act-try-on-leg = przymierz, nogawka ma mieć { $due }

makes = razem { $count } { stitches }
makes-each = na każdej { $count } { stitches }
makes-each-half = na każdej połowie { $count } { stitches }
makes-front-back = z tyłu { $back }, z przodu { $front }
makes-on = { $count } { stitches }: { $where }
stage-begins = { $rounds } { rounds-word }: { $stage }
heel-stage-begins = { $rows ->
        [one] jeden rząd
        [few] { $rows } rzędy
       *[other] { $rows } rzędów
    }: { $stage } { AS($sock, form: "of") }
heel-begins = pięta, najpierw gładkie przody
half-counts = przed { $before }, po { $after }: { $where }
turn-wraps = owinięcia: z lewej { $on_left }, z prawej { $on_right }, w środku bez { $unmarked }
turn-doubles = podwójne: z lewej { $on_left }, z prawej { $on_right }, w środku bez { $unmarked }
flap-gussets = klin: z lewej { $on_left }, z prawej { $on_right }
toe-rows-ahead = { $rows ->
    [one] I jeden rząd palców.
    [few] I { $rows } rzędy palców.
   *[other] I { $rows } rzędów palców.
}
heel-rows-ahead = { $rows ->
        [one] I jeden rząd pięty.
        [few] I { $rows } rzędy pięty.
       *[other] I { $rows } rzędów pięty.
    }
mark-of-other-plan = z innego planu znacznik { $number }
mark = znacznik { $number }: { $where }, z { AS($of, form: "genitive") } okrążenie { $round }, { $stage }
marker-faces-you = znacznik jest z przodu
marker-hidden = znacznik jest z tyłu
marker-not-yet = znacznika jeszcze nie ma
marker-at-start = znacznik wisi na początku okrążenia
yarn-in-the-gap = w przerwie wisi nitka { AS($sock, form: "of") }
yarn-at-the-edge = na brzegu wisi nitka { AS($sock, form: "of") }
yarn-at-the-working-point = w robocie jest nitka { AS($sock, form: "of") }
yarn-cut = ucięta jest nitka { AS($sock, form: "of") }
check-count = { $count } { stitches } ma { $where }
check-middle = w środku { $count } { stitches } bez znaku ma { $where }
cause-cast-on-miscounted = źle nabrano
cause-first-loop-lost = spadło pierwsze oczko
cause-increase-missed = zabrakło dodania
cause-increase-round-twice = dwa razy dodano
cause-decrease-missed = zabrakło ujęcia
cause-decreased-twice = dwa razy ujęto
cause-increased-on-front = dodano też z przodu
cause-dropped-stitch = spadło oczko
cause-yarn-over-or-split = jest narzut albo rozdwojone oczko
cause-join-forgotten = zapomniano złączyć
cause-two-eaten = wzięto dwa naraz
cause-corner-not-joined = róg nie jest zamknięty
cause-worked-too-far = rząd poszedł za daleko
cause-bound-off-early = za wcześnie zakończono
wish-at-round = ustawienie okrążenia
wish-ripped-back = prucie
wish-at-round-on = { $sock }: ustawienie okrążenia
wish-ripped-back-on = { $sock }: prucie
wish-next = dalej
wish-stop = koniec

call = { $stage ->
        [none] { "" }
       *[other] { CAPITAL($stage) }.{ " " }
    }{ $where ->
        [none] { "" }
       *[other] { CAPITAL($where) }.{ " " }
    }{ $acts ->
        [none] { "" }
       *[other] { CAPITAL($acts) }.{ " " }
    }{ $work ->
        [none] { "" }
       *[other] { CAPITAL($work) }.{ " " }
    }{ $then ->
        [none] { "" }
       *[other] { CAPITAL($then) }.{ " " }
    }{ $makes ->
        [none] { "" }
       *[other] { CAPITAL($makes) }.
    }
call-round = Z { AS($of, form: "genitive") } { $round }.
call-round-one = Z { AS($of, form: "genitive") } { $round }.
call-round-same = Z { AS($of, form: "genitive") } { $round }, jak poprzednie.
finished-written = Gotowe.
finished-already-written = Już gotowe.
finished = Obie skarpetki gotowe.
finished-already = Obie skarpetki są już gotowe.
undone = Cofnięte. { $call }
undone-other-plan = Cofnięte: wraca poprzedni plan.
nothing-to-undo = Nie ma czego cofnąć.
redone = Przywrócone. { $call }
redone-other-plan = Przywrócone: wraca następny plan.
nothing-to-redo = Nie ma czego przywrócić.
went-back = { CAPITAL($rounds) } { rounds-word } wstecz. { $call }
went-back-fewer = Tylko { $rounds } { rounds-word } wstecz, nie { $asked }. { $call }
cannot-go-back = To jest początek.
went-forward = { CAPITAL($rounds) } { rounds-word } naprzód. { $call }
went-forward-fewer = Tylko { $rounds } { rounds-word } naprzód, nie { $asked }. { $call }
cannot-go-forward = To jest ostatnie okrążenie.
no-rounds = To nie jest żadne okrążenie.
ask-at-round = { in-stage }: to tutaj?
ask-at-round-on = { in-stage }, { $sock }: to tutaj?
no-such-round = { CAPITAL($stage) }: z { AS($of, form: "genitive") } nie ma okrążenia { $round }.
ask-ripped-back = Sprute do: { $stage }, z { AS($of, form: "genitive") } okrążenie { $round }?
ask-ripped-back-on = { CAPITAL($sock) } spruta do: { $stage }, z { AS($of, form: "genitive") } okrążenie { $round }?
ripped-back-to-where = Sprute do czego?
no-such-stage = Takiej części nie ma.
not-knitted-yet = Okrążenie { $round } jeszcze nie zrobione: { $stage }.
ask-next = Czy to już zrobione? { $call }
ask-stop = Do końca strony { $to_go ->
        [one] jedno oczko
        [few] { $to_go } oczka
       *[other] { $to_go } oczek
    }, { $where }. Skończyć tutaj?
place-set = { in-stage }. { $call }
place-set-on = { in-stage }, { $sock }. { $call }
dropped = Porzucone: { $wish }.
nothing-asked = O nic nie pytano.
wish-replan = zmiana planu
ask-replan = { CAPITAL($part) } { $length }: masz { $rounds } zamiast { $planned } okrążeń na dziesięć centymetrów, więc { $changes }. Wziąć to?
    .join-changes = { $before } i { $after }
replan-change = { $stage } będzie mieć { $after } zamiast { $before }
replan-taken = Wzięte. { in-stage }. { $call }
tape-passed = { CAPITAL($part) } { $length } zamiast { $aimed }: masz { $rounds } okrążeń na dziesięć centymetrów, spruj trochę.
tape-same = { CAPITAL($part) } bez zmian: masz { $rounds } okrążeń na dziesięć centymetrów.
tape-too-early = { CAPITAL($part) }: za wcześnie na mierzenie.
tape-too-late = { CAPITAL($part) }: za późno na zmiany, najpierw spruj.
tape-second-sock = { CAPITAL($part) } jak w pierwszej skarpetce, która jest gotowa: tyle samo okrążeń.
tape-no-plan = Z tej miary nie ma innego planu.
tape-unlikely = { CAPITAL($part) } powinna mieć około { $planned }, a nie { $length }: zmierz jeszcze raz.
yarn-taken-as = Liczone po { $metres } metrów na sto gramów.
yarn-lost-otherwise = Ubyło { $lost }, a powinno { $reckoned } gramów: czy to ten motek?
join-doubts = { $before } { $after }
yarn-doubts = { $doubts ->
        [none] { "" }
       *[other] { " " }{ $doubts }
    }
yarn-left-enough = { CAPITAL($metres) } metrów to { $grams } gramów: wystarczy dla { AS($whose, form: "of") }, zostanie { $spare }.{ yarn-doubts }
yarn-left-short = { CAPITAL($metres) } metrów to { $grams } gramów: dla { AS($whose, form: "of") } wystarczy do: { $stage }, z { $of } okrążenie { $round }; nogawka może mieć { $leg }.{ yarn-doubts }
yarn-left-short-foot = { CAPITAL($metres) } metrów to { $grams } gramów: dla { AS($whose, form: "of") } wystarczy do: { $stage }, z { $of } okrążenie { $round }; trzeba nowego motka.{ yarn-doubts }
yarn-left-too-much = Motek waży { $ball }, a nie { $grams } gramów: zważ jeszcze raz.
new-ball = Nowy motek dla { AS($sock, form: "of") }: { $stage }, z { $of } okrążenie { $round }, { $where }. Zostaw { $tail } centymetrów i zachowaj { $metres } metrów na zakończenia.
new-ball-here = Nowy motek dla { AS($sock, form: "of") }: tutaj, { $where }. Zostaw { $tail } centymetrów i zachowaj { $metres } metrów na zakończenia.
new-ball-anywhere = Nowy motek dla { AS($sock, form: "of") }: tu, gdzie jesteś. Zostaw { $tail } centymetrów i zachowaj { $metres } metrów na zakończenia.
where-am-i = { in-stage }. { CAPITAL($where) }. { $apart ->
        [none] { "" }
       *[other] { CAPITAL($apart) }.{ " " }
    }{ $counts ->
        [none] { "" }
       *[other] { CAPITAL($counts) }.{ " " }
    }{ $heel ->
        [none] { "" }
       *[other] { CAPITAL($heel) }.{ " " }
    }Teraz: { $call }
how-many = { CAPITAL($where) }: zostało { $to_go }, teraz { $now }, potem { $after }.
how-many-whole = { CAPITAL($where) }: w okrążeniu zostało { $to_go }, teraz { $now }, potem { $after }.
how-far = Do końca { $in_sock }, w { AS($stage, form: "in") } { $rounds } { rounds-word }. { $heels }
how-far-written = Do końca całości { $in_sock }, w { AS($stage, form: "in") } { $rounds } { rounds-word }. { $heels }
how-far-in-heel = Do końca { $in_sock }, w { AS($stage, form: "in") } { $rows ->
        [one] jeden rząd
        [few] { $rows } rzędy
       *[other] { $rows } rzędów
    }. { $heels }
what-next = Potem: { $call }
explanation = { CAPITAL($how) }.
nothing-to-explain = To same prawe i lewe.
explain-co = Nabierz: przeciągaj nitkę przez pętlę na kciuku
explain-closed-toe = Zamknięty czubek: owijaj nitkę wokół obu drutów
explain-ktbl = Prawe przekręcone: wbij się od tyłu
explain-ptbl = Lewe przekręcone: wbij się od tyłu
explain-sl-wyib = Zdejmij: przełóż bez przerabiania, nitka z tyłu
explain-sl-wyif = Zdejmij: przełóż bez przerabiania, nitka z przodu
explain-kfb = Dwa z jednego: przerób na prawo z przodu i z tyłu
explain-pfb = Dwa z jednego: przerób na lewo z przodu i z tyłu
explain-m1l = Dodaj w lewo: podnieś nitkę od przodu i przerób od tyłu
explain-m1r = Dodaj w prawo: podnieś nitkę od tyłu i przerób od przodu
explain-lifted-l = Dodaj podniesione w lewo: przerób oczko spod poprzedniego
explain-lifted-r = Dodaj podniesione w prawo: przerób oczko spod następnego
explain-yo = Narzut: połóż nitkę na drucie
explain-k2tog = Dwa razem na prawo: przerób oba jak jedno
explain-ssk = Zdejmij dwa jak na prawo i przerób razem od tyłu
explain-p2tog = Dwa razem na lewo: przerób oba jak jedno
explain-ssp = Zdejmij dwa, oddaj je i przerób razem na lewo od tyłu
explain-k3tog = Trzy razem na prawo
explain-sssk = Zdejmij trzy i przerób razem od tyłu
explain-s2kp2 = Zdejmij dwa, przerób jedno, przełóż zdjęte
explain-skp = Zdejmij jedno, przerób jedno, przełóż zdjęte
explain-sk2p = Zdejmij jedno, przerób dwa razem, przełóż zdjęte
explain-p3tog = Trzy razem na lewo
explain-wrap-turn = Owiń: nitka na drugą stronę, przełóż oczko, nitka z powrotem
explain-with-wraps = Z owinięciem: podnieś je i przerób z oczkiem
explain-ds = Podwójne: zdejmij oczko i pociągnij nitkę do góry
explain-with-doubles = Podwójne przerób jak jedno
explain-twin = Bliźniak: przerób oczko spod następnego i połóż obok
explain-bo = Zakończ: przerób jedno i przełóż czekające
explain-bind-off-together = Zakończ: przerób czekające i następne razem od tyłu
explain-fasten = Zabezpiecz: przeciągnij nitkę przez ostatnie oczko
explain-yo-bo = Zakończ z narzutem: przełóż narzut i czekające
explain-sew-bo = Zszyj: igła przez dwa oczka i z powrotem przez pierwsze
explain-graft = Zszyj oczko w oczko igłą
explain-graft-rib = Zszyj ściągacz oczko w oczko igłą
explain-three-needle = Zakończ z obu drutów: przerób po jednym z każdego razem
explain-k2tog-strand = Zamknij róg: podnieś nitkę i przerób z oczkiem
explain-ssk-strand = Zamknij róg: zdejmij, podnieś nitkę, przerób razem od tyłu
explain-gather = Ściągnij: przewlecz nitkę przez oczka
explain-waste = Nitka pomocnicza: przerób nią i zsuń z powrotem
explain-thread = Przewlecz nitkę przez oczka
explain-free = Nałóż uwolnione oczka na drut
explain-pick-up = Podnieś nitkę na drut
explain-co-waste = Nabierz na nitce pomocniczej
explain-pick-up-k = Nabierz z brzegu: przeciągnij nitkę jako nowe oczko
explain-prepare-the-tips = Trzymaj oba końce drutu obok siebie
explain-cast-on-loosely = Nabieraj na oba końce razem
explain-secure-the-tail = Połóż koniec pod nitką
explain-draw-the-back-tip = Wysuń tylny koniec, oczka zostają na żyłce
explain-join-in-the-round = Połącz oczka w okrążenie
explain-pull-out-the-waste-yarn = Wypruj nitkę pomocniczą, łap oczka
explain-snip-the-heel-open = Przetnij oczko i rozpruj do końców nitki
explain-lifeline = Przewlecz gładką nitkę przez wszystkie oczka
explain-try-on = Rozsuń oczka na żyłce i przymierz
explain-measure = Połóż płasko i zmierz środkiem
explain-sew-the-hem-down = Podwiń brzeg i przyszyj luźno
explain-weave-in = Schowaj końce igłą
explain-wash = Upierz ręcznie i wysusz płasko
explain-marker = Zawieś znacznik na przodzie
again = Nie ma czego powtórzyć.
grain-set = { CAPITAL($grain) }. { $call }
grain-finest = Mniejszych kroków nie ma.
grain-coarsest = Większych kroków nie ma.
marked = Znacznik { $number }.
marks = { CAPITAL($marks) }.
no-marks = Znaczników nie ma.
count-right = { CAPITAL($where) }: { $stitches } się zgadza.
count-too-many = { CAPITAL($where) }: ma być { $expected }, jest { $stitches }, za dużo o { $difference }. { $causes ->
        [none] { "" }
       *[other] Może { $causes }.
    }
count-too-few = { CAPITAL($where) }: ma być { $expected }, jest { $stitches }, za mało o { $difference }. { $causes ->
        [none] { "" }
       *[other] Może { $causes }.
    }
stopped = Koniec w { AS($stage, form: "in") }, { $where }, z { AS($of, form: "genitive") } okrążenie { $round }.
stopped-finished-written = Koniec. Gotowe.
stopped-finished = Koniec. Obie skarpetki gotowe.
resume = { CAPITAL($pair) }. { in-stage }. { CAPITAL($where) }. { $apart ->
        [none] { "" }
       *[other] { CAPITAL($apart) }.{ " " }
    }{ CAPITAL($marker) }. { $yarns ->
        [none] { "" }
       *[other] { CAPITAL($yarns) }.{ " " }
    }{ $check ->
        [none] { "" }
       *[other] Sprawdź: { $check }.{ " " }
    }Teraz: { $call }
resume-whole = { CAPITAL($pair) }. { in-stage }. { $apart ->
        [none] { "" }
       *[other] { CAPITAL($apart) }.{ " " }
    }{ CAPITAL($marker) }. { $yarns ->
        [none] { "" }
       *[other] { CAPITAL($yarns) }.{ " " }
    }{ $check ->
        [none] { "" }
       *[other] Sprawdź: { $check }.{ " " }
    }Teraz: { $call }
resume-finished-written = { CAPITAL($pair) }: gotowe.
resume-finished = { CAPITAL($pair) }: obie gotowe.

field-schema-version = wersja pliku
field-name = nazwa pary
field-socks = nazwy skarpetek
field-swatch = próbka
field-stitches = oczka próbki
field-rounds = okrążenia próbki
field-over = szerokość próbki
field-worked = sposób dziergania próbki
field-washed = pranie próbki
field-counts = dalsze próbki
field-foot-length = długość stopy
field-shoe = rozmiar buta
field-ball = obwód śródstopia
field-ankle = obwód kostki
field-heel-diagonal = obwód pięty
field-calf = obwód łydki
field-leg = nogawka
field-leg-height = wysokość nogawki z nazwy
field-cuff = ściągacz
field-ease-percent = luz
field-around = oczka dookoła
field-cast-on = nabranie
field-gusset = klin
field-foot-rounds = gładkie okrążenia stopy
field-leg-rounds = okrążenia nogawki
field-cuff-rounds = okrążenia ściągacza
field-calf-shape = dodawanie na łydkę
field-needle = drut
field-skein = waga motka
field-skein-length = długość nitki w motku
field-skeins = liczba motków
field-direction = kierunek
field-toe = palce
field-increase = dodawanie
field-sole = podeszwa
field-heel = pięta
field-leg-style = rodzaj nogawki
field-cuff-style = rodzaj ściągacza
field-bind-off = zakończenie
field-needles = druty
field-one-at-a-time = po jednej skarpetce
field-through-back-loop = przekręcanie
field-chart = schemat
field-practice = próbna para
cure-cast-on = nabierz { $loops }
cure-rounded-toe = wybierz okrągłe palce
cure-rounded-toe-cast-on = wybierz okrągłe palce i nabierz { $loops }
cure-around = weź { $stitches } dookoła
cure-gauge = dziergaj { $rounds } okrążeń na dziesięć centymetrów
cure-foot = zrób stopę { $length }
cure-heel-with-gusset = wybierz piętę z klinem
cure-gusset = zrób klin na { $stitches } z każdej strony
cure-calf-shaped = wybierz nogawkę { $name }
cure-leg = zrób nogawkę { $length } albo krótszą
cure-bind-off = wybierz zakończenie { $name }
cure-cast-on-needle = nabierz o wiele grubszym drutem
cure-bind-off-needle = zakończ o wiele grubszym drutem
cure-needle-up = weź grubszy drut
cure-needle-down = weź cieńszy drut
cure-needle-up-to = weź grubszy drut, { $millimetres } milimetra
cure-needle-down-to = weź cieńszy drut, { $millimetres } milimetra
cure-measure-again = zmierz jeszcze raz
foot-from-shoe = { CAPITAL($length) }, z dokładnością { $give_or_take }: rozmiar { $shoe }.
foot-in-shoes = Stopa { $foot } to rozmiar { $sizes }.
foot-estimated = { CAPITAL($length) }, z dokładnością { $give_or_take }: długość stopy oszacowana.
ball-estimated = { CAPITAL($length) }, z dokładnością { $give_or_take }: śródstopie oszacowane.
ankle-estimated = { CAPITAL($length) }, z dokładnością { $give_or_take }: kostka oszacowana.
heel-estimated = { CAPITAL($length) }, z dokładnością { $give_or_take }: obwód pięty oszacowany.
calf-estimated = { CAPITAL($length) }, z dokładnością { $give_or_take }: łydka oszacowana.
child-estimated = Dla dziecka to tylko szacunek.
leg-chosen = Nogawka: { $length }.
leg-height-unused = Nogawka jest podana: nazwa jej wysokości się nie liczy.
calf-shaped = Od okrążenia { $first } nogawka się rozszerza, co { $every } na środku tyłu, par: { $pairs }; u góry { $stitches } i { $circumference } dookoła.
calf-narrowed = Nogawka ma u góry { $stitches } i { $circumference } dookoła. Od okrążenia { $first } zwęża się co { $every } na środku tyłu, par: { $pairs }.
calf-straight = Nogawka { $leg } zostaje prosta, bez dodawania na łydkę.
cuff-chosen = Ściągacz: { $length }.
ease-chosen = Luz: { $percent } procent.
foot-shortened = Krócej o { $shorter }: { $finished } zamiast { $foot }.
stitches-rounded = Wielokrotność { $multiple }: { $stitches } zamiast { $exact }.
around-yours = { CAPITAL($circumference) } dookoła, { $percent } procent mniej: { $stitches }.
around-larger-than-foot = { CAPITAL($circumference) } dookoła przy { $ball }, za szeroko: { $stitches } zamiast { $better }.
around-tight = { CAPITAL($circumference) } dookoła przy { $ball }, { $percent } procent mniej, za ciasno: { $stitches } zamiast { $better }.
foot-yours = Stopa { $made } przy { $rounds } gładkich, dla stopy { $foot }.
foot-rounded = Stopa { $made } zamiast { $wanted }: { $rounds } { rounds-word }.
leg-rounded = Nogawka { $made } zamiast { $wanted }: { $rounds } { rounds-word }.
cuff-rounded = Ściągacz { $made } zamiast { $wanted }: { $rounds } { rounds-word }.
cuff-at-least-one-round = Ściągacz ma choć jedno okrążenie: { $made }.
swatch-small = Próbka { $length } jest mała: weź choć { $least }.
cast-on-unusual = Nabranie { $loops } jest niezwykłe: zwykle od { $least } do { $most }.
leg-wide = Nogawka { $circumference } przy kostce { $ankle } będzie luźna: { $cure }.
leg-tight = Nogawka { $circumference } przy kostce { $ankle }, { $percent } procent mniej, będzie ciasna: { $cure }.
calf-tight = Nogawka { $leg } sięga, gdzie jest { $girth }, a ma { $circumference }, { $percent } procent mniej, będzie ciasna: { $cure }.
heel-tight = Pięta { $heel }, a skarpetka daje { $most }, będzie ciasno: { $cure }.
heel-loose = Pięta { $heel }, a skarpetka ma { $circumference }, będzie luźno: { $cure }.
edge-tight = Brzeg { $circumference } rozciąga się do { $gives }, a trzeba { $girth }: { $cure }.
fit-checked = Rozciągnięcie: śródstopie { $ball } procent, pięta { $heel }, nogawka { $leg }, brzeg { $edge } z { $gives }.
gauge-mean = Średnia z { $counts }: { $stitches } oczek na dziesięć centymetrów, z dokładnością { $give_or_take }, i { $rounds } okrążeń, z dokładnością { $rounds_off }.
swatch-unwashed = Próbka nie była prana: wypierz ją i policz jeszcze raz.
swatch-flat = Próbka była dziergana na płasko: policz też pierwsze okrążenia.
washing-changes-stitches-more = Po praniu jest o { $percent } procent więcej oczek.
washing-changes-stitches-fewer = Po praniu jest o { $percent } procent mniej oczek.
washing-changes-rounds-more = Po praniu jest o { $percent } procent więcej okrążeń.
washing-changes-rounds-fewer = Po praniu jest o { $percent } procent mniej okrążeń.
flat-differs-stitches-more = W okrążeniach jest o { $percent } procent więcej oczek niż na płasko.
flat-differs-stitches-fewer = W okrążeniach jest o { $percent } procent mniej oczek niż na płasko.
flat-differs-rounds-more = W okrążeniach jest o { $percent } procent więcej okrążeń niż na płasko.
flat-differs-rounds-fewer = W okrążeniach jest o { $percent } procent mniej okrążeń niż na płasko.
gauge-more-stitches-than-rounds = { CAPITAL($rounds) } okrążeń do { $stitches } oczek: sprawdź próbkę.
needles-hold-one = Na drutach pończoszniczych po jednej skarpetce.
practice-size = Próbna para: { $circumference } dookoła, stopa { $foot }, nogawka { $leg }, { $stitches } oczek.
practice-ignores = Próbna para pomija: { $field }.
yarn-weight-0 = koronkowa
yarn-weight-1 = bardzo cienka
yarn-weight-2 = cienka
yarn-weight-3 = lekka
yarn-weight-4 = średnia
yarn-weight-5 = gruba
yarn-weight-6 = bardzo gruba
yarn-weight-7 = olbrzymia
join-classes = { $before } albo { $after }
yarn-class = Włóczka { $classes }, na druty od { $thin } do { $thick } milimetra.
yarn-class-and-up = Włóczka { $classes }, na druty od { $thin } milimetra.
yarn-needed = Na parę pójdzie około { $metres } metrów, { $grams } gramów; z zapasem { $buy_metres } metrów, { $buy_grams } gramów.
yarn-needed-contrast = Drugiego koloru pójdzie około { $metres } metrów, { $grams } gramów; z zapasem { $buy_metres } metrów, { $buy_grams } gramów.
yarn-assumed = Liczone po { $metres } metrów na sto gramów: przeczytaj banderolę.
yarn-enough = Motki: { $skeins }, wystarczą, zostanie około { $grams } gramów.
yarn-close = Motki: { $skeins }, ledwo wystarczą, zrób nogawkę { $leg }.
yarn-close-foot = Motki: { $skeins }, ledwo wystarczą, weź jeszcze jeden.
yarn-short = Motki: { $skeins }, nie wystarczą, nitka skończy się: { $stage }, okrążenie { $round }; starczy na nogawkę { $leg }.
yarn-short-foot = Motki: { $skeins }, nie wystarczą, nitka skończy się: { $stage }, okrążenie { $round }; weź jeszcze jeden.
yarn-halves = Jeden motek na obie: na każdą { $grams } gramów, a zakończenie bierze { $reserve }.
foot-missing = Brakuje długości stopy: podaj ją.
length-out-of-range = { CAPITAL($field) } { $length } nie leży między { $least } a { $most }.
gauge-out-of-range = { CAPITAL($field) } { $gauge } nie leży między { $least } a { $most }.
gauge-zero = { CAPITAL($field) } nie może być zero.
ease-out-of-range = Luz { $percent } nie leży między { $least } a { $most }.
around-uneven = Wielokrotność { $multiple }: weź { $below } albo { $above } zamiast { $stitches }.
around-too-few = Weź choć { $least } zamiast { $stitches }.
around-too-many = Weź najwyżej { $most } zamiast { $stitches }.
too-few-stitches = Choć { $least } trzeba, a jest { $stitches } przy { $gauge }: weź cieńszą włóczkę.
cast-on-unfit = Weź { $below } albo { $above } zamiast { $loops } dla { $stitches }.
cast-on-too-few = Nabierz choć { $least } zamiast { $loops }.
not-toe-up = { at-place }{ CAPITAL($field) } „{ $name }” nie jest od palców: wybierz z { $choices }.
not-cuff-down = { at-place }{ CAPITAL($field) } „{ $name }” nie jest od ściągacza: wybierz z { $choices }.
chart-not-cuff-down = { at-place }Od ściągacza nie ma schematu: opuść go albo zacznij od palców.
cast-on-not-cuff-down = { at-place }Od ściągacza nabierasz wszystkie oczka, nie { $loops }: opuść tę liczbę.
cast-on-not-half = Palce rzędami skróconymi zaczynasz od połowy z { $stitches }: nabierz { $half } zamiast { $loops }.
cast-on-too-many = Nabierz najwyżej { $most } zamiast { $loops } dla { $stitches }.
foot-too-short = Jest { $there }, a trzeba { $needed } ({ $toe }, { $gusset }, { $turn }): { $cure }.
number-out-of-range = { CAPITAL($field) } { $number } nie leży między { $least } a { $most }.
needle-out-of-range = Drut { $millimetres } milimetra nie leży między { $least } a { $most }.
skein-out-of-range = { CAPITAL($field) } { $text } nie leży między 1 a { $most }.
leg-too-short = Choć { $least } trzeba: nogawka { $leg }, ściągacz { $cuff }.
cuff-too-short = Choć { $least } trzeba: ściągacz { $cuff }.
bind-off-needs-rib = Zakończenie { $name } jest do ściągacza jeden na jeden, a nie do { $cuff }: wybierz ściągacz rib-1x1 albo zakończenie { $better }.
calf-shape-too-high = Ostatnie dodawanie na łydkę byłoby w okrążeniu { $last }, a nogawka ma { $rounds }: zacznij niżej albo zrób wyższą.
calf-shape-uneven = Par dodawań na łydkę ma być { $better }, a nie { $pairs }.
names-alike = Obie nazywają się { $name }: nazwij je inaczej.
shoe-unreadable = „{ $text }” nie jest rozmiarem buta.
shoe-no-system = „{ $text }” nie mówi, czyj to rozmiar.
shoe-men-or-women = „{ $text }” to { $women } albo { $men }.
shoe-out-of-range = „{ $text }” nie leży między { $least } a { $most }.
file-unreadable = Wiersz { DIGITS($line) }, kolumna { DIGITS($column) }: { $text }.
file-too-long = Plik ma ponad { $most } znaków: skróć go.
file-too-new = Znam wersję { DIGITS($known) }, plik ma { DIGITS($found) }.
field-unknown = { at-place }„{ $name }” nie istnieje.
field-misspelt = { at-place }„{ $name }” nie istnieje: może „{ $meant }”?
field-missing = { at-place }Brakuje: { $field }.
field-not-a-table = { at-place }{ CAPITAL($field) } ma być tabelą.
length-no-unit = { at-place }{ CAPITAL($field) }, „{ $text }”: dodaj jednostkę do { $number }.
length-unknown-unit = { at-place }{ CAPITAL($field) }, „{ $text }”: „{ $unit }” nie jest jednostką.
length-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: to nie jest długość.
number-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: to nie jest liczba.
whole-number-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: to nie jest liczba całkowita.
yes-or-no-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: napisz true albo false.
text-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: to nie jest tekst.
text-empty = { CAPITAL($field) } jest puste.
two-names-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: napisz dwie nazwy.
needle-unknown = { at-place }Nie ma drutu „{ $text }”: podaj grubość.
needle-ambiguous = { at-place }„{ $text }” to { $thin } albo { $thick } milimetra: podaj grubość.
calf-shape-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: podaj pairs, first_round i every.
counts-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: podaj oczka albo okrążenia.
weight-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: podaj wagę, na przykład 50g.
yarn-length-unreadable = { at-place }{ CAPITAL($field) }, „{ $text }”: podaj długość, na przykład 210m.
choice-unknown = { at-place }{ CAPITAL($field) }, „{ $text }”: wybierz z { $choices }.

cast-on-out-of-order = { at-place }Nie po kolei nabrano: { $half } { $sock }.
opened-out-of-order = { at-place }Nie po kolei otwarto piętę: { $half } { $sock }.
heel-rows-wrong = { at-place }Pięta ma mieć rzędów { $wanted }, ma { $found }.
turn-broken = { at-place }Obrót pięty jest przerwany.
row-broken = { at-place }Rząd jest przerwany.
flap-broken = { at-place }Płat jest przerwany.
row-index-wrong = { at-place }Rząd ma mieć numer { $wanted }, ma { $found }.
stage-wrong = { at-place }Ma być { $wanted }, jest { $found }.
round-number-wrong = { at-place }Okrążenie ma mieć numer { $wanted }, ma { $found }.
rows-missing = { at-place }Brakuje rzędów: { $stage }.
wrong-loops-at-tip = { at-place }Ma być { $half } { $sock }, jest { $at_half } { $at_sock }.
too-few-loops = { at-place }Za mało oczek: { $half } { $sock }.
loops-not-worked = { at-place }Nie przerobiono { $loops }: { $half } { $sock }.
other-sock-on-needle = { at-place }Na drutach skarpetki { $sock } zostało { $loops }, a druga jest już nabierana.
loops-at-end = { at-place }Na końcu zostało { $loops }.
height-off = { at-place }Wysokość ma mieć { $wanted }, wychodzi { $found }.
written-unread = Własny opis planu jest nieczytelny.
written-otherwise = { at-place }Rząd nie zgadza się z opisem.
count-wrong = { at-place }Plan mówi { $stated }, jest { $found }.
nothing-to-pass-over = { at-place }Nie ma czego przeciągnąć: { $sock }.
nothing-kept = { at-place }Zachowano tylko { $loops }.
kept-loops-left = { at-place }Na pomocniczej nitce zostaje { $loops }.
nothing-to-graft-to = { at-place }Nie ma z czym zszyć: { $sock }.
fastened-too-early = { at-place }Zakończono, a zostało { $loops }.
yarn-elsewhere = { at-place }Nitka { $yarn } jest gdzie indziej niż skarpetka { $sock }.
yarn-of-other-sock = { at-place }Skarpetka { $sock } ma nitkę { $yarn }.
wrong-side = { at-place }Ma być strona { $wanted }, jest { $found }.
wrong-half = { at-place }Ma być { $wanted }, jest { $found }.
turn-missing = { at-place }Brakuje obrotu.
turn-not-due = { at-place }Obrót jest zbędny.
wrap-not-lifted = { at-place }Nie podniesiono owinięć: { $loops }.
no-wrap-there = { at-place }Nie ma owinięć: { $loops }.
double-not-joined = { at-place }Nie złączono podwójnych: { $loops }.
no-double-there = { at-place }Nie ma podwójnych: { $loops }.
mark-misplaced = { at-place }{ CAPITAL($op) } nie tutaj.
turned-at-wrong-loop = { at-place }Obrót ma być przy { $wanted }, jest przy { $found }.
flap-join-wrong = { at-place }Złączenie ma być { $wanted }, jest { $found }.
increases-not-mirrored = { at-place }Dodania nie są lustrzane.
op-out-of-place = { at-place }{ CAPITAL($stage) } nie zna { $op }.
corner-strands-wrong = { at-place }Nitki z rogów są źle.
rib-broken = { at-place }Ściągacz jest przerwany.
socks-differ = { at-place }Rząd różni się od { $other_row }.
needles-wrong = { at-place }Na drutach jest { $found }, a ma być { $wanted }.
act-missing = { at-place }Brakuje: { $act }.
act-not-due = { at-place }Zbędne: { $act }.
acts-out-of-order = { at-place }Nie po kolei: { $act }.
stated-wrong = { at-place }Rzędy dają { $found }, plan mówi { $stated }: { $name }.
circumference-off = { at-place }Ma być { $wanted } dookoła, jest { $found }.
foot-length-off = { at-place }Stopa ma mieć { $wanted }, ma { $found }.
leg-length-off = { at-place }Nogawka ma mieć { $wanted }, ma { $found }.

welcome = Dzień dobry. Podaję kolejne kroki, a ty mówisz „dalej”.
say-next = Proszę powiedzieć: dalej.
sound-fine = Dobrze słyszę.
too-quiet = Za cicho: podejdź bliżej.
too-loud = Za głośno: odejdź dalej.
too-noisy = Za duży hałas tutaj.
heard-nothing = Nic nie słyszę: czy mikrofon działa?
heard-otherwise = „{ $said }” słyszę.
sound-check-skipped = Bez próby dźwięku.
microphone-tried = { CAPITAL($name) }: próbuję inny mikrofon.
no-ears = Nie słyszę: używaj klawiszy.
no-mouth = Nie mówię: czytaj wiersze.
teach-begin = Uczę się { $words ->
    [one] jednego polecenia
   *[other] { SPELLED($words) } poleceń
 }, każde trzy razy, bez nagrywania.
teach-say = Powiedz: { $text }.
teach-again = Jeszcze raz: { $text }.
teach-unclear = Powiedz samo „{ $text }”, nie za krótko.
teach-unlike = „{ $text }” miało być, brzmiało inaczej.
teach-anew = Zaczynamy od nowa: { $text }.
teach-done = W pliku { $path } znam { $words ->
    [one] jedno polecenie
   *[other] { SPELLED($words) } poleceń
 }.
teach-nothing = Niczego nie umiem: każde polecenie trzy razy.
teach-forgotten = Zapomniane: { $path }.
teach-none = Nie ma czego zapominać.
taught-unreadable = { $file }: nie umiem tego odczytać, słucham bez tego.
taught-unwritable = { $file }: nie umiem tego zapisać.
did-you-mean = „{ $said }” miało być?
which-number = { CAPITAL(SPELLED($first)) } czy { SPELLED($second) }?
listening = Słucham.
listening-again = Znowu słucham.
listening-paused = Nie słucham. Powiedz „słuchaj znowu”.
attention-on = „{ $word }” mów teraz przed poleceniem.
attention-off = Polecenia znowu bez hasła.
attending = Tak?
louder = Głośniej.
loudest = Głośniej nie umiem.
softer = Ciszej.
softest = Ciszej nie umiem.
faster = Szybciej.
fastest = Szybciej nie umiem.
slower = Wolniej.
slowest = Wolniej nie umiem.
voice-only = Tylko głos.
lines-only = Tylko wiersze.
voice-and-lines = Głos i wiersze.
help = Powiedz „dalej”, gdy krok gotowy; „gdzie jestem”, „ile oczek”, „cofnij”, „koniec na dzisiaj”.
help-keys = Spacja: dalej. U: cofnij. Q: koniec.
nothing-said-yet = Jeszcze nic nie mówię.
time-to-go = W parze { $in_pair }, w tej części { $in_stage }.
time-about = około { $duration }
time-between = do { $most }, a choć { $least }
duration-few-minutes = kilka minut
duration-minutes = { $minutes ->
        [one] jedna minuta
        [few] { AS($minutes, form: "feminine") } minuty
       *[other] { $minutes } minut
    }
duration-half-hour = pół godziny
duration-hours = { $hours ->
        [one] jedna godzina
        [few] { AS($hours, form: "feminine") } godziny
       *[other] { $hours } godzin
    }
duration-hours-and-half = { AS($hours, form: "feminine") } i pół godziny
settings-are-in = { $path } przechowuje ustawienia.
microphone-is = { CAPITAL($name) }: mikrofon.
microphone-usual = Mikrofon systemowy.
speaker-is = { CAPITAL($name) }: głośnik.
speaker-usual = Głośnik systemowy.
voice-is = { CAPITAL($name) }: głos.
voice-usual = Zwykły głos.
rate-is = Słów na minutę: { DIGITS($words) }.
loudness-is = Głośność w procentach: { DIGITS($percent) }.
wording-terse = Krótkie zdania.
wording-plain = Zwykłe zdania.
wording-learner = Zdania dla uczących się.
while-speaking-wait = Polecenia czekają, aż skończy mówić.
while-speaking-headphones = Polecenia przerywają: głos musi być w słuchawkach.
while-speaking-loudspeaker = Gdy mówi, słyszy „dalej”, „powtórz” i „cisza”.
rests-are-on = Przerwa po minutach: { DIGITS($minutes) }.
rests-are-off = Bez propozycji przerw.
careful-on = Gdy nie wiem, co słyszę, pytam o drugą opinię.
careful-off = Bez drugiej opinii.
language-is = Język: { $name }.
microphone-here = Jest mikrofon: { $name }.
speaker-here = Jest głośnik: { $name }.
voice-here = Jest głos: { $name }.
voices-besides = Głosy innych języków: { DIGITS($count) }, pokaże je --all-voices.
microphone-gone = Nie ma teraz mikrofonu { $name }: używam systemowego.
speaker-gone = Nie ma teraz głośnika { $name }: używam systemowego.
voice-gone = Nie ma teraz głosu { $name }: używam zwykłego.
second-opinion-gone = Nie ma { $what } do drugiej opinii, słucham bez niej: wpisz „{ $cure }”.
second-opinion-slow = Druga opinia trwałaby { DIGITS($milliseconds) } ms, najwyżej { DIGITS($most) } ms da się czekać: słucham bez niej.
second-opinion-foreign = Druga opinia jest tylko po angielsku: słucham bez niej.
settings-damaged = Ustawienia są zepsute, { $aside } je przechowuje: { $file }.
settings-unreadable = Nie da się czytać ustawień: { $file }.
settings-unwritable = Nie da się zapisać ustawień: { $file }.
check-file = Baza jest zepsuta: { $found }.
check-gap = Brakuje zdarzenia { DIGITS($seq) }.
check-event = Nie da się czytać zdarzenia { DIGITS($seq) }.
check-plan = Zmieniono plan { $plan }.
check-plan-missing = Brakuje planu { $plan } zdarzenia { DIGITS($seq) }.
check-place = Takiego miejsca nie ma: zdarzenie { DIGITS($seq) }.
check-not-begun = Parę „{ $name }” trzeba zacząć: zdarzenie { DIGITS($seq) }.
check-replay = Nie wynika z poprzednich: zdarzenie { DIGITS($seq) }.
rest-due = Bez przerwy { $minutes ->
        [one] jedna minuta
        [few] { AS($minutes, form: "feminine") } minuty
       *[other] { $minutes } minut
    }: odpocznij.
resting = Odpoczywaj.
no-rest-to-end = Nie było przerwy.
rest-snoozed = Przypomnę za { $minutes ->
        [one] { $minutes } minutę
        [few] { $minutes } minuty
       *[many] { $minutes } minut
    }.
no-rests-today = Dzisiaj bez przerw.
rests-again = Przerwa znowu po { $minutes } min.
rest-over = Przerwa: { $minutes ->
        [one] jedna minuta
        [few] { AS($minutes, form: "feminine") } minuty
       *[other] { $minutes } minut
    }.
hand-care = Gdy bolą ręce, przestań i zapytaj lekarza albo fizjoterapeutę.
resume-or-new = „{ $name }” dalej? Nie znaczy: nowa para.
resume-or-another = „{ $name }” dalej? Nie znaczy: inna albo nowa para.
which-pair = Która para: { $pairs }? Podaj numer, „pomiń” znaczy nowa.
pair-choice = { $name }: { $number }
pair-begins = „{ $name }” się zaczyna.
goodbye = Do widzenia.
interrupted = Przerwane. Wszystko zapisane.
plan-edited = Plan „{ $name }” zmieniono: zostaje jak był.
plan-taken = Plan „{ $name }” zmieniono, a to, co zrobione, jest takie samo: dalej według nowego.
plan-taken-measured = Plan „{ $name }” zmieniono, a to, co zrobione, jest takie samo: dalej według nowego, w zmierzonych okrążeniach.
plan-taken-unmeasured = Plan „{ $name }” zmieniono, a to, co zrobione, jest takie samo: dalej według nowego, bez tego, co zmierzono.
plan-edited-ask = Plan „{ $name }” zmieniono. Dalej jak było?
plan-edited-ask-measured = Plan „{ $name }” zmieniono, zmierzone okrążenia zostają. Dalej jak było?
plan-edited-ask-unmeasured = Plan „{ $name }” zmieniono, a to, co zmierzono, przepadnie. Dalej jak było?
plan-stays = Zostaje plan, jaki był.
plan-lost = Brakuje planu: { $name }.
plan-written = { CAPITAL($path) }: plan zapisany.
piece-summary = Dookoła najwyżej { $around }, { $circumference }, wysokość { $height }.
pair-summary = Nogawka { $leg }, z dokładnością { $leg_off }, stopa { $foot }, z dokładnością { $foot_off }, { $circumference } dookoła, z dokładnością { $circumference_off }: { $around }.
keep-this = Zachować to?
new-pair = Nowa para. Pytam, a ty odpowiadasz.
ask-practice = Mała para na próbę?
ask-foot-length = Jaka jest długość stopy?
ask-ball = Ile ma śródstopie dookoła?
ask-ankle = Ile ma kostka dookoła?
ask-leg = Jak wysoka nogawka?
ask-cuff = Jak głęboki ściągacz?
ask-stitches = Ile oczek na dziesięć centymetrów?
ask-rounds = Ile okrążeń na dziesięć centymetrów?
ask-heel-diagonal = Ile ma pięta dookoła, od przodu kostki?
ask-calf = Ile ma łydka dookoła?
ask-skein = Ile gramów waży motek?
ask-skein-length = Ile metrów ma motek?
ask-skeins = Ile masz motków?
ask-unit = Centymetry czy cale: { $number }?
answer-length = { CAPITAL($length) }.
answer-count = { CAPITAL($number) }.
answer-skipped = Oszacuję to.
answer-needed = To muszę wiedzieć.
ask-earlier = { CAPITAL($question) } Było: { $answer }; „dalej” zostawia.
told-length = { $length }
told-count = { $number }
told-skipped = pominięte
ask-all-again = Pytam więc od nowa.
interview-help = { CAPITAL($answer) } Powiedz „pomiń”, „powtórz” albo „cofnij”.
help-practice = Mała para pokazuje każdy krok: powiedz „tak” albo „nie”.
help-foot-length = Stań piętą przy ścianie i zmierz do końca najdłuższego palca.
help-ball = Stań i zmierz stopę tam, gdzie jest najszersza.
help-ankle = Zmierz nogę nad kostką, gdzie jest najwęższa.
help-heel-diagonal = Zmierz od przodu kostki dookoła pięty.
help-calf = Zmierz łydkę tam, gdzie jest najszersza.
help-leg = Zmierz od góry pięty do brzegu skarpety.
help-cuff = To ściągacz u góry; zwykle cztery centymetry.
help-stitches = Policz oczka na dziesięciu centymetrach upranej próbki. Bez próbki najpierw ją zrób.
help-rounds = Policz okrążenia na dziesięciu centymetrach upranej próbki.
help-skein = Jest na banderoli.
help-skein-length = Jest na banderoli, obok wagi.
help-skeins = Policz całe motki.
not-yes-or-no = Proszę powiedzieć tak albo nie.
stage-lines = { DIGITS($rows) } rzędów, { DIGITS($rounds) } okrążeń: { $stage }.
plan-fine = { DIGITS($rows) } rzędów sprawdzono: { $name }.
journal-fine = { DIGITS($events) } zdarzeń: { $path }.
journal-salvaged = { DIGITS($events) } zdarzeń uratowano: { $path }.
model-listed = { $name }; { $language }; { $purpose }; { $licence }; { $size }; { $here }
model-size = { DIGITS($megabytes) } MB
model-size-unknown = nieznany rozmiar
model-here = jest: { $path }
model-not-here = nie ma, roundcaller models fetch { $name }
model-fetching = { DIGITS($percent) } procent: { $name }.
model-fetched = Pobrano: { $name }.
model-fine = Sprawdzono: { $name }.
demo-same = Wszystkie polecenia usłyszano: { $commands }.
demo-differs = Usłyszano „{ $heard }” zamiast „{ $said }”.
path-missing = Nie ma pliku { $file }.
path-not-text = To nie jest tekst: { $file }.
path-taken = Plik { $file } już jest: wybierz inną nazwę.
path-unreadable = Nie da się czytać ({ $reason }): { $file }.
system-refused = System odmówił ({ $reason }).
path-unwritable = Nie da się pisać ({ $reason }): { $file }.
language-unknown = Wybierz z { $known }: nie ma języka „{ $language }”.
language-broken = Język „{ $language }” jest zepsuty, { $what }: { $file }.
option-unknown = Nie ma opcji { $option }, zobacz „{ $command } --help”.
option-missing = Brakuje { $option }, zobacz „{ $command } --help”.
option-empty = Po { $option } brakuje wartości, zobacz „{ $command } --help”.
option-choice = Dla { $option } wybierz jedno z tych: { $choices }.
option-range = { $option }: od { DIGITS($least) } do { DIGITS($most) }.
option-number = { $option }: liczba całkowita.
option-unreadable = Nie da się czytać { $option }, zobacz „{ $command } --help”.
argument-missing = Brakuje { $argument }, zobacz „{ $command } --help”.
argument-too-many = Za dużo po „{ $command }”: „{ $text }”.
verb-unknown = Nie ma „{ $text }” w „{ $command }”, jest { $verbs }.
verb-missing = Po „{ $command }” brakuje jednego z: { $verbs }.
usage-unclear = Niezrozumiałe, zobacz „{ $command } --help”.
typed-from-elsewhere = Pisane słowa są ze standardowego wejścia: bez --from.
model-without-vosk = Opcja --model należy do --recogniser vosk.
speak-to-what = Opcja --to nie zna „{ $text }”: speaker, none albo plik.
speak-to-itself = Opcja --to nie może być plikiem --from.
show-what = Brakuje pliku planu albo --schema.
no-such-take = Nie ma nagrania { DIGITS($take) }: od 1 do { DIGITS($takes) }.
listen-to-what = Podaj nagranie albo mikrofon.
option-before-verb = { $option } stoi za { $verb }: napisz tam.
nothing-to-resume = Nie ma pary: podaj plan.
no-pair-named = Są { $names }: nie ma „{ $name }”.
packages-mixed-up = Obcy pakiet „{ $package }”: { $path }.
microphone-lost = Mikrofon zniknął: { $name }.
speaker-lost = Głośnik zniknął: { $name }.
unexpected = Coś poszło źle ({ $reason }).
no-portaudio = Brakuje biblioteki PortAudio: zainstaluj ją.
no-microphone = Nie ma mikrofonu: podłącz go.
no-speaker = Nie ma głośnika: podłącz go.
no-such-microphone = Jest { $found }: nie ma mikrofonu „{ $wanted }”.
no-such-speaker = Jest { $found }: nie ma głośnika „{ $wanted }”.
device-refused = Nie otwiera się: { $name }.
device-lost = Zniknęło: { $name }.
no-voice = Nie ma głosu: zainstaluj espeak-ng.
no-echo-canceller = Bez tłumienia echa głośnik zagłusza polecenia: pip install "roundcaller[loudspeaker]" albo --while-speaking wait.
no-such-voice = Nie ma głosu „{ $wanted }”, jest { $found }.
several-microphones = Mikrofony pasujące do „{ $wanted }”: { $found }. Podaj więcej.
several-speakers = Głośniki pasujące do „{ $wanted }”: { $found }. Podaj więcej.
several-voices = Głosy pasujące do „{ $wanted }”: { $found }. Podaj więcej.
wav-missing = Nie ma nagrania { $path }.
wav-unreadable = Nie da się odczytać nagrania { $path }.
wav-empty = Nagranie jest puste: { $path }.
wav-unsupported = Nieznany rodzaj ({ $encoding }): { $path }.
wav-in-the-way = To nie jest dźwięk: { $path }.
wav-unwritable = Nie da się zapisać: { $path }.
speech-failed = Nie da się powiedzieć: „{ $text }”.
model-unknown = Wybierz z { $names }: nie ma modelu „{ $name }”.
model-missing = Wpisz „{ $cure }”: nie ma modelu { $name }.
model-broken = Wpisz „{ $cure }”: model { $name } jest zepsuty ({ $what }).
checksum-wrong = Wpisz „{ $cure }”: suma { $actual } zamiast { $expected }, { $name }.
checksum-unknown = Wpisz „{ $cure }”: suma modelu { $name } nie jest znana.
models-offline = Nie ma połączenia z { $host }: { $name }.
models-server-refused = { CAPITAL($url) } odpowiada { $status }: { $name }.
fetch-broken-off = Wpisz „{ $cure }”: z { $expected } jest { $received }, { $name }.
fetch-size-wrong = Jest { $actual } zamiast { $expected }: { $name }.
archive-unsafe = Niebezpieczny wpis { $entry }: { $name }.
models-no-room = Trzeba { $needed_mb } MB w { $folder }: { $name }.
models-folder-closed = Nie da się pisać ({ $reason }): { $folder }.
recogniser-unavailable = Wpisz „{ $cure }”: nie działa { $recogniser }.
second-opinion-missing = Do drugiej opinii potrzeba { $what }, czego nie ma na tym komputerze: wpisz „{ $cure }” albo pomiń --careful.
words-unknown = Tych słów nie usłyszy { $recogniser }: { $words }.
rate-unusable = Między { $lowest_hz } a { $highest_hz }, nie { $rate_hz }.
journal-missing = Nie ma dziennika { $file }.
journal-in-use = Inny program ma dziennik { $file }.
journal-moved = Inny program pisał do dziennika { $file }.
journal-newer = Znam wersję { $known }, dziennik { $file } ma { $version }.
journal-foreign = To nie jest dziennik: { $file }.
journal-damaged = Da się odczytać { $readable }: dziennik { $file } jest zepsuty.
journal-unwritable = Nie da się pisać do dziennika { $file }.
pair-unknown = Pary „{ $name }” nie ma: { $file }.
disk-full = Dysk jest pełny: { $file }.
disk-failed = Dysk zawiódł: { $file }.

written-no-pattern = { at-place }Nie ma okrążeń: dodaj opis.
written-head-wrong = { at-place }Tabela planu jest zmieniona: { $text }.
written-field-wrong = { at-place }{ $name } nie może być „{ $text }”.
written-needles = { at-place }Druty „{ $text }”: wybierz z { $choices }.
written-pair-needs-halves = { at-place }Dwie części naraz leżą w połowach: wybierz { $choices }.
written-size-needed = { at-place }Jest kilka rozmiarów: wybierz z { $choices }.
written-size-unknown = { at-place }Nie ma rozmiaru „{ $text }”: wybierz z { $choices }.
written-swatch-needed = { at-place }Brakuje: { $name }.
written-not-a-multiple = Nabranych { $stitches } nie dzieli się przez { $multiple }.
written-not-understood = { at-place }„{ $text }”: tego tu nie rozumiem.
written-sizes-differ = { at-place }Rozmiarów jest { $wanted }, liczb { $found }.
written-star-alone = { at-place }Po gwiazdce brakuje powtórzenia.
written-how-often = { at-place }Nie wiadomo, ile razy.
written-too-deep = { at-place }Powtórzenia w powtórzeniach: najwyżej { $most }.
written-round-empty = { at-place }Okrążenie jest puste.
written-nothing-same = { at-place }Nie ma czego powtórzyć tak samo.
written-too-few = { at-place }Z { AS($stitches, form: "genitive") } oczek okrążenie { $round } bierze { $used }: za mało.
written-too-many = { at-place }Z { AS($stitches, form: "genitive") } oczek okrążenie { $round } bierze { $used }: za dużo.
written-repeat-uneven = { at-place }Z { AS($stitches, form: "genitive") } oczek okrążenie { $round } bierze { $used }: powtórzenie ma { $width }.
written-count-differs = { at-place }Opis mówi { $stated }, jest { $found }.
written-never-ends = { at-place }To nie bierze oczek i nigdy się nie skończy.
written-too-long = { at-place }Okrążenie { $round } jest dłuższe niż { $most }.
written-round-twice = { at-place }Okrążenie { $round } jest dwa razy.
written-round-missing = { at-place }Przed okrążeniem { $following } brakuje okrążenia { $round }.
written-no-such-round = { at-place }Nie ma okrążenia { $round }.
written-half-missing = { at-place }W okrążeniu { $round } brakuje: { $half }.
written-half-twice = { at-place }W okrążeniu { $round } ta sama połowa jest dwa razy.
written-across-halves = { at-place }W okrążeniu { $round } to bierze oczka obu połów.
written-no-marker = { at-place }W okrążeniu { $round } nie ma tu znacznika.
written-marker-in-the-way = { at-place }W okrążeniu { $round } przeszkadza znacznik.
written-act-in-the-way = { at-place }W środku okrążenia nie może być: { $act }.
written-no-chart = { at-place }Nie ma schematu „{ $name }”{ $names ->
        [none] { "" }
       *[other] : wybierz z { $names }
    }.
chart-empty = { at-place }Schemat { $name } jest pusty.
chart-symbol-unknown = { at-place }Schemat { $name }, rząd { $row }: „{ $symbol }” nie jest znakiem.
chart-brackets = { at-place }Schemat { $name }, rząd { $row }: nawiasy się nie zgadzają.
chart-rows-differ = { at-place }Schemat { $name }, rząd { $row }: bierze { $found }, pierwszy { $wanted }.
chart-count-changes = { at-place }Schemat { $name }, rząd { $row }: z { AS($wanted, form: "genitive") } robi { $found }.
chart-too-wide = { at-place }Schemat { $name } ma { $found }, a przód { $wanted }.
chart-edges-around = { at-place }Schemat { $name } dookoła nie ma brzegów.
chart-on-calf = { at-place }Schemat { $name } leży dookoła nogawki, więc nie może się rozszerzać: połóż go z przodu albo wybierz prostą.
chart-uneven = { at-place }Schemat { $name }: { $stitches } nie dzieli się przez { $multiple }, weź { $below } albo { $above }.
chart-wish-wrong = { at-place }Schemat { $name } jest źle opisany.
chart-row-wrong = { at-place }Rząd nie idzie za schematem.
chart-not-followed = { at-place }Rząd nie jest rzędem { $row } schematu.
