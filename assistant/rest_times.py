"""After how long a rest is offered, how long it is, and when the offer comes again.

Nothing is published for knitting; the figures are from keyboard work:
- 5 to 10 minutes after 50 to 60 minutes of work, short and often rather than long and rarely (UK Health and
  Safety Executive, L26, on display screen work);
- 5 minutes more in every hour made hands and forearms less sore without loss of output (Galinsky and
  others 2000, Ergonomics 43:622-638, n = 42; again in 2007, n = 51);
- of the breaks tried, one every 20 minutes did best (McLean and others 2001, Applied Ergonomics 32:225-237):
  so an offer that is passed over comes again after 20 minutes, not before.
"""

WORK_MINUTES = 50
REST_MINUTES = 5
REPEAT_MINUTES = 20
DAY_MINUTES = 12 * 60
"""How long "today" lasts where no more rests are wanted: until she has slept, whenever she knits."""
