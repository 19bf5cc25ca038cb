"""From the tape measure to a plan file, and to what is shown of it."""

import json
from pathlib import Path

import jsonschema
import pytest

from assistant.command_line import run
from plans.files import read_wishes, write_wishes
from plans.json_form import plan_id
from plans.making import Made, make_plan
from plans.pattern import BindOff, Heel, Toe
from plans.quantities import Length
from plans.stitches import TAKES_MAKES
from plans.wishes import Wishes
from tests.assistant.running import HERS, PRACTICE_OPTIONS
from tests.assistant.sitting import PRACTICE
from tests.strategies import CHOICES, beginning


def planned(out: Path, *options: str) -> Wishes:
    """What the plan file holds after `plan` with these options."""
    assert 0 == run(["plan", *options, "--out", str(out)])
    wishes = read_wishes(out.read_text(encoding="utf-8"))
    assert isinstance(wishes, Wishes)
    return wishes


def shown(capsys: pytest.CaptureFixture[str], *options: str) -> str:
    capsys.readouterr()
    assert 0 == run(["show", *options])
    caught = capsys.readouterr()
    assert "" == caught.err
    return caught.out


def test_every_option_stands_in_the_file(tmp_path: Path) -> None:
    wishes = planned(
        tmp_path / "gift.toml", *HERS, "--ankle", "21cm", "--leg", "15cm", "--cuff", "4cm", "--over", "9cm", "--ease",
        "8%", "--around", "64", "--cast-on", "24", "--toe", "rounded", "--heel", "german", "--bind-off", "sewn",
        "--socks", "odd, even",
    )  # fmt: skip

    expected = {
        "name": "gift", "socks": ("odd", "even"), "foot_length": Length.parse("24.5cm"), "ball": Length.parse("23cm"),
        "ankle": Length.parse("21cm"), "leg": Length.parse("15cm"), "cuff": Length.parse("4cm"), "ease_percent": 8,
        "around": 64, "cast_on": 24, "toe": Toe.ROUNDED, "heel": Heel.GERMAN, "bind_off": BindOff.SEWN,
        "practice": False,
    }  # fmt: skip
    assert expected == {name: getattr(wishes, name) for name in expected}
    assert (30, 42, Length.parse("9cm")) == (wishes.swatch.stitches, wishes.swatch.rounds, wishes.swatch.over)


@pytest.mark.parametrize(("field", "name"), CHOICES)
def test_every_construction_can_be_planned_and_shown(
    field: str, name: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "socks.toml"
    planned(out, *PRACTICE_OPTIONS, f"--{field.replace('_', '-')}", name, "--direction", beginning(field, name).value)
    plan = json.loads(shown(capsys, str(out), "--as", "json"))

    assert name == plan["construction"][field.removesuffix("_style")]


@pytest.mark.parametrize(("file", "options", "name"), [
    ("gift for her.toml", (), "gift for her"),
    ("gift for\n\ther.toml", (), "gift for her"),
    ("größe 39.toml", (), "größe 39"),
    ("“x” \\ $(y).toml", (), "“x” \\ $(y)"),
    ("🧦.toml", (), "🧦"),
    (".toml", (), ".toml"),
    ("\x1b[2J.toml", (), "[2J"),
    ("socks.toml", ("--name", "hers"), "hers"),
    ("socks.toml", ("--name", ""), "socks"),
])  # fmt: skip
def test_a_pair_is_called_as_wished_or_as_its_file(
    file: str, options: tuple[str, ...], name: str, tmp_path: Path
) -> None:
    assert name == planned(tmp_path / file, *PRACTICE_OPTIONS, *options).name


def test_a_name_that_is_no_text_is_mended(tmp_path: Path) -> None:
    assert "a\N{REPLACEMENT CHARACTER}b" == planned(tmp_path / "x.toml", *PRACTICE_OPTIONS, "--name", "a\udcffb").name


def test_what_was_assumed_is_told_on_standard_error_and_nothing_on_standard_output(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    planned(tmp_path / "socks.toml", *HERS)
    told = capsys.readouterr()

    assert "" == told.out
    for part in ("ankle was estimated", "10 percent smaller", "rounded to sixty-four", "leg was chosen"):
        assert part in told.err
    assert told.err.splitlines()[-1] == str(tmp_path / "socks.toml")


def test_the_stitches_around_may_be_hers(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    planned(tmp_path / "socks.toml", *HERS, "--around", "60", "--cast-on", "20")
    plan = json.loads(shown(capsys, str(tmp_path / "socks.toml"), "--as", "json"))
    cast_on = [row["stitches_after"] for row in plan["rows"] if row["stage"] == "cast-on" and row["sock"] == 1]

    assert 60 == plan["around"]
    assert [10, 10] == cast_on


def test_a_plan_is_written_over_in_place_with_its_rights_kept(tmp_path: Path) -> None:
    out = tmp_path / "socks.toml"
    out.write_text("old")
    out.chmod(0o640)
    planned(out, *PRACTICE_OPTIONS)

    assert 0o640 == out.stat().st_mode & 0o777
    assert [out] == list(tmp_path.iterdir())


def test_a_plan_may_be_a_link(tmp_path: Path) -> None:
    there, link = tmp_path / "there.toml", tmp_path / "link.toml"
    there.write_text("old")
    link.symlink_to(there)
    planned(link, *PRACTICE_OPTIONS)

    assert link.is_symlink()
    assert "old" != there.read_text()


# --- show ----------------------------------------------------------------------------------------------------------


@pytest.fixture
def practice(tmp_path: Path) -> Path:
    file = tmp_path / "practice.toml"
    file.write_text(write_wishes(PRACTICE), encoding="utf-8")
    return file


def test_json_fits_its_schema(practice: Path, capsys: pytest.CaptureFixture[str]) -> None:
    schema = json.loads(shown(capsys, "--schema"))
    plan = json.loads(shown(capsys, str(practice), "--as", "json"))

    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(plan, schema, cls=jsonschema.Draft202012Validator)
    assert "https://json-schema.org/draft/2020-12/schema" == schema["$schema"]


@pytest.mark.parametrize("damage", [
    lambda plan: plan.pop("rows"),
    lambda plan: plan["rows"][0].update(facing="up"),
    lambda plan: plan["rows"][0]["ops"][0].update(op="weave"),
    lambda plan: plan["rows"][0]["ops"][0].pop("times"),
    lambda plan: plan.update(around="64"),
    lambda plan: plan.update(colour="red"),
])  # fmt: skip
def test_the_schema_refuses_what_is_no_plan(damage, practice: Path, capsys: pytest.CaptureFixture[str]) -> None:
    schema = json.loads(shown(capsys, "--schema"))
    plan = json.loads(shown(capsys, str(practice), "--as", "json"))
    damage(plan)

    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(plan, schema)


def test_json_holds_what_was_agreed(practice: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan = json.loads(shown(capsys, str(practice), "--as", "json"))

    top = {"schema_version", "name", "socks", "construction", "gauge", "finished", "around", "multiple", "stages"}
    assert {*top, "rows"} <= plan.keys()
    assert {"toe", "heel", "bind_off", "direction", "needles"} <= plan["construction"].keys()
    assert {"stitches_per_10cm", "rounds_per_10cm"} == plan["gauge"].keys()
    assert {"circumference_cm", "foot_length_cm", "leg_cm"} == plan["finished"].keys()
    stages = ["cast-on", "toe", "foot", "gusset", "heel-turn", "heel-flap", "heel", "leg", "cuff", "bind-off"]
    names = [stage["name"] for stage in plan["stages"]]
    assert set(names) <= set(stages)
    for stage in plan["stages"]:
        rows = plan["rows"][stage["first_row"] : stage["last_row"] + 1]
        assert {stage["name"]} == {row["stage"] for row in rows}
    wanted = {"index", "stage", "round", "sock", "half", "facing", "ops", "turn_after", "stitches_after", "acts"}
    for index, row in enumerate(plan["rows"]):
        assert wanted <= row.keys()
        assert index == row["index"]
        assert row["sock"] in {1, 2} and row["half"] in {"front", "back"} and row["facing"] in {"RS", "WS"}
        assert all(group.keys() <= {"op", "times", "wrap", "double"} for group in row["ops"])


def test_loops_of_each_half_add_up_from_the_json_alone(practice: Path, capsys: pytest.CaptureFixture[str]) -> None:
    plan = json.loads(shown(capsys, str(practice), "--as", "json"))
    takes_makes = {str(op): pair for op, pair in TAKES_MAKES.items()}
    takes_makes |= {op: (given["takes"], given["makes"]) for op, given in plan.get("extra_ops", {}).items()}
    loops: dict[tuple[int, str], int] = {}
    for row in plan["rows"]:
        half = row["sock"], row["half"]
        grown = sum((takes_makes[g["op"]][1] - takes_makes[g["op"]][0]) * g["times"] for g in row["ops"])
        loops[half] = loops.get(half, 0) + grown
        assert row["stage"] == "bind-off" or row["stitches_after"] == loops[half], row

    for sock in (1, 2):  # one loop of the front waits, and is bound off with the back
        assert 0 == loops[sock, "front"] + loops[sock, "back"]


def test_text_shows_measures_stages_and_every_step_a_fact_a_line(
    practice: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = shown(capsys, str(practice)).splitlines()
    made = make_plan(PRACTICE)
    assert isinstance(made, Made)

    assert lines[0].startswith("Twenty-four stitches around, ten point nine centimetres, give or take zero point two")
    assert f"Practice: {len(made.plan.rows)} rows, proven loop by loop." == lines[-1]
    assert "Cast-on: 1 round, 4 rows." in lines
    assert "That was the last of it: both socks are done." not in lines
    assert all(line == line.strip() and line.endswith((".", "?")) for line in lines)
    assert len(lines) > len(made.plan.rows) / 2


def test_text_calls_the_socks_by_their_names(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    planned(tmp_path / "socks.toml", *PRACTICE_OPTIONS, "--socks", "rose,lily")
    text = shown(capsys, str(tmp_path / "socks.toml"))

    assert "Rose, front" in text and "Lily, front" in text
    assert "first sock" not in text.lower()


def test_a_file_edited_by_hand_is_computed_anew(practice: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = json.loads(shown(capsys, str(practice), "--as", "json"))
    text = practice.read_text(encoding="utf-8")
    practice.write_text(text.replace('heel = "wrapped"', 'heel = "german"'), encoding="utf-8")
    after = json.loads(shown(capsys, str(practice), "--as", "json"))

    assert before["rows"] != after["rows"]
    assert "german" == after["construction"]["heel"]


def test_the_same_wishes_give_the_same_plan() -> None:
    plans = [make_plan(PRACTICE) for _ in range(2)]
    ids = {plan_id(made.plan) for made in plans if isinstance(made, Made)}

    assert 1 == len(ids)
    assert 64 == len(ids.pop())
