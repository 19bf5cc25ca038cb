"""An archive from elsewhere is unpacked inside its folder and within bounds, or not at all."""

import io
import stat
import zipfile

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from models.errors import ArchiveUnsafe
from models.unpacking import MOST_ENTRIES, SMALLEST_LIMIT_BYTES, unpack_zip


def packed(entries):
    """A zip archive of (name or entry, content) pairs."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in entries:
            archive.writestr(name, content)
    return buffer.getvalue()


def unpack(tmp_path, content):
    """What lies in the folder afterwards."""
    archive = tmp_path / "model.zip.part"
    archive.write_bytes(content)
    folder = tmp_path / "unpacked"
    unpack_zip("small", archive, folder)
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def refusal(tmp_path, content):
    """The entry an archive is refused for; nothing but the archive may be there afterwards."""
    with pytest.raises(ArchiveUnsafe) as refused:
        unpack(tmp_path, content)
    everything = [path.name for path in tmp_path.rglob("*")]
    assert everything == ["model.zip.part"]
    return refused.value.values["entry"]


@pytest.mark.parametrize(
    ("entries", "expected"),
    [
        ({"m/a": b"1", "m/b/c": b"2"}, {"a": b"1", "b/c": b"2"}),
        ({"m/a": b"1", "n/c": b"2"}, {"m/a": b"1", "n/c": b"2"}),
        ({"m/a": b"1", "c": b"2"}, {"m/a": b"1", "c": b"2"}),
        ({"a": b"1"}, {"a": b"1"}),
    ],
)
def test_one_folder_around_everything_is_taken_off(tmp_path, entries, expected):
    assert expected == unpack(tmp_path, packed(entries.items()))


def test_what_was_in_the_folder_before_is_gone(tmp_path):
    (tmp_path / "unpacked").mkdir()
    (tmp_path / "unpacked" / "old").write_bytes(b"old")

    expected = {"new": b"new"}
    assert expected == unpack(tmp_path, packed([("new", b"new")]))


@pytest.mark.parametrize(
    "name", ["../evil", "a/../../evil", "/etc/evil", "C:/evil", "..\\evil", "a/..", "\\\\host\\share\\evil"]
)
def test_an_entry_that_leads_out_of_the_folder_is_refused(tmp_path, name):
    assert name == refusal(tmp_path, packed([("fine", b""), (name, b"evil")]))


@pytest.mark.parametrize("kind", [stat.S_IFLNK, stat.S_IFIFO, stat.S_IFCHR])
def test_a_link_or_device_is_refused(tmp_path, kind):
    entry = zipfile.ZipInfo("link")
    entry.external_attr = (kind | 0o777) << 16

    assert refusal(tmp_path, packed([(entry, b"/etc/passwd")])) == "link"


def test_files_far_larger_than_their_archive_are_refused(tmp_path):
    bomb = packed([("small", b"x"), ("bomb", bytes(SMALLEST_LIMIT_BYTES + 10))])

    assert refusal(tmp_path, bomb) == "bomb"


def test_many_files_that_are_too_large_together_are_refused(tmp_path):
    half = bytes(SMALLEST_LIMIT_BYTES // 2)

    assert refusal(tmp_path, packed([("a", half), ("b", half), ("c", half)])) == "c"


def test_too_many_entries_are_refused(tmp_path):
    assert refusal(tmp_path, packed([(f"{number}", b"") for number in range(MOST_ENTRIES + 1)])) == "10001"


@pytest.mark.parametrize("content", [b"", b"no zip file", packed([("a", b"1")])[:-10]], ids=["empty", "words", "cut"])
def test_what_is_no_archive_is_refused(tmp_path, content):
    assert refusal(tmp_path, content) == "model.zip.part"


def test_an_empty_archive_is_refused(tmp_path):
    assert refusal(tmp_path, packed([])) == "0"


def test_the_same_name_twice_is_refused(tmp_path):
    with pytest.warns(UserWarning, match="Duplicate"):
        twice = packed([("a", b"1"), ("a", b"2")])

    assert refusal(tmp_path, twice) == "a"


@given(position=st.integers(35, 90), bit=st.integers(0, 7))
@settings(max_examples=40)
def test_a_damaged_entry_is_never_unpacked_as_if_sound(tmp_path_factory, position, bit):
    content = bytes(range(97)) * 3
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_STORED) as archive:
        archive.writestr("file", content)
    damaged = bytearray(buffer.getvalue())
    damaged[position] ^= 1 << bit

    assert refusal(tmp_path_factory.mktemp("damaged"), bytes(damaged)) in {"file", "model.zip.part"}
