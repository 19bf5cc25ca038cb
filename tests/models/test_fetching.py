"""A model is fetched whole, checked and put in place, or nothing is changed and the reason is told."""

import hashlib
import io
import socket
import zipfile
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from models.catalogue import Model
from models.errors import (
    ArchiveUnsafe,
    BrokenOff,
    ChecksumUnknown,
    ChecksumWrong,
    FolderClosed,
    ModelMissing,
    ModelUnknown,
    NoRoom,
    Offline,
    ServerRefused,
    SizeWrong,
)
from models.fetching import fetch
from models.keeping import Against, list_models, model_path, part_path, receipt_path, verify
from tests.models.site import Lines, Site

FILES = {"conf/model.conf": b"--min-active=200\n", "am/final.mdl": np.random.default_rng(7).bytes(400_000)}


def zipped(files=FILES, around="small-model/"):
    """A zip archive with a single folder around its files, as the published ones have."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in files.items():
            packed.writestr(around + name, content)
    return buffer.getvalue()


def sha256(content):
    return hashlib.sha256(content).hexdigest()


ARCHIVE = zipped()
ARCHIVE_SHA256 = sha256(ARCHIVE)
ARCHIVE_BYTES = len(ARCHIVE)


@pytest.fixture(autouse=True)
def no_proxy(monkeypatch):
    """The server of these tests is on this machine, whatever its surroundings say."""
    monkeypatch.setenv("no_proxy", "*")


@pytest.fixture
def site():
    with Site(ARCHIVE) as serving:
        yield serving


@pytest.fixture
def known(site):
    """A catalogue with one model that is recorded in full."""
    return among(site.url)


def among(url, sha256=ARCHIVE_SHA256, size_bytes=ARCHIVE_BYTES):
    model = Model("small", "en", "vosk", "Apache-2.0", "invented", size_bytes, sha256, url)
    return {"small": model}


def fetch_small(data_dir, known, **options):
    return fetch("small", data_dir, options.pop("progress", Lines()), among=known, **options)


def contents(folder):
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_a_model_is_downloaded_checked_unpacked_and_found(tmp_path, known):
    progress = Lines()

    path = fetch_small(tmp_path / "new" / "folder", known, progress=progress)

    assert contents(path) == FILES
    assert path == model_path("small", tmp_path / "new" / "folder", known)
    assert Against.CATALOGUE is verify("small", tmp_path / "new" / "folder", known)
    expected = ["small", "small.receipt.json"]
    assert expected == names(path.parent)


def test_progress_is_told_once_at_each_tenth(tmp_path, site):
    large = zipped({"am/final.mdl": np.random.default_rng(8).bytes(3_000_000)})
    site.behaviour.content = large
    progress = Lines()

    fetch_small(tmp_path, among(site.url, sha256(large), len(large)), progress=progress)

    expected = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100]
    assert expected == [percent // 10 * 10 for percent in progress.percents]
    assert len(large) == progress.received[-1]


def test_what_is_here_and_sound_is_not_fetched_again(tmp_path, known, site):
    fetch_small(tmp_path, known)

    fetch_small(tmp_path, known)

    assert len(site.asked) == 1


def test_a_damaged_model_is_fetched_anew(tmp_path, known, site):
    path = fetch_small(tmp_path, known)
    (path / "am/final.mdl").write_bytes(b"damaged")

    fetch_small(tmp_path, known)

    assert contents(path) == FILES
    assert len(site.asked) == 2


def test_a_broken_connection_keeps_what_came_and_the_next_fetch_goes_on_from_there(tmp_path, known, site):
    site.behaviour.breaks_after = 150_000
    with pytest.raises(BrokenOff) as broken:
        fetch_small(tmp_path, known)
    assert broken.value.values["received"] == "150000"
    assert broken.value.values["expected"] == str(len(ARCHIVE))
    assert list_models(tmp_path, known)[0].received_bytes == 150_000

    site.behaviour.breaks_after = None
    path = fetch_small(tmp_path, known)

    assert contents(path) == FILES
    expected = [None, "bytes=150000-"]
    assert expected == site.asked


def test_a_download_may_break_many_times(tmp_path, known, site):
    site.behaviour.breaks_after = 60_000
    tries = 0
    while not (tmp_path / "models" / "small").exists():
        tries += 1
        try:
            fetch_small(tmp_path, known)
        except BrokenOff:
            continue

    assert tries == len(ARCHIVE) // 60_000 + 1
    assert Against.CATALOGUE is verify("small", tmp_path, known)


def test_a_server_without_ranges_begins_anew(tmp_path, known, site):
    site.behaviour.breaks_after = 150_000
    with pytest.raises(BrokenOff):
        fetch_small(tmp_path, known)
    site.behaviour = replace(site.behaviour, breaks_after=None, ranges=False)

    path = fetch_small(tmp_path, known)

    assert contents(path) == FILES


def test_a_file_changed_on_the_server_since_is_not_mixed_with_the_old_one(tmp_path, known, site):
    site.behaviour = replace(site.behaviour, content=bytes(len(ARCHIVE)), breaks_after=150_000)
    with pytest.raises(BrokenOff):
        fetch_small(tmp_path, known)
    site.behaviour = replace(site.behaviour, content=ARCHIVE, breaks_after=None, tag='"second"')

    path = fetch_small(tmp_path, known)

    assert contents(path) == FILES


def test_without_an_entity_tag_a_broken_download_begins_anew(tmp_path, known, site):
    site.behaviour = replace(site.behaviour, tag="", breaks_after=150_000)
    with pytest.raises(BrokenOff):
        fetch_small(tmp_path, known)
    site.behaviour.breaks_after = None

    fetch_small(tmp_path, known)

    expected = [None, None]
    assert expected == site.asked


def test_a_part_from_elsewhere_longer_than_the_file_is_thrown_away(tmp_path, known, site):
    site.behaviour.breaks_after = 150_000
    with pytest.raises(BrokenOff):
        fetch_small(tmp_path, known)
    with part_path("small", tmp_path).open("ab") as part:
        part.write(bytes(len(ARCHIVE)))
    site.behaviour.breaks_after = None

    path = fetch_small(tmp_path, known)

    assert contents(path) == FILES


def test_a_whole_download_left_by_a_crash_is_used_without_the_network(tmp_path, known, site):
    site.behaviour.breaks_after = 150_000
    with pytest.raises(BrokenOff):
        fetch_small(tmp_path, known)
    part_path("small", tmp_path).write_bytes(ARCHIVE)

    path = fetch_small(tmp_path, known)

    assert contents(path) == FILES
    assert len(site.asked) == 1


def test_a_wrong_file_is_removed_and_both_checksums_are_told(tmp_path, known, site):
    wrong = bytes(len(ARCHIVE))
    site.behaviour.content = wrong

    with pytest.raises(ChecksumWrong) as refused:
        fetch_small(tmp_path, known)

    assert sha256(ARCHIVE) == refused.value.values["expected"]
    assert sha256(wrong) == refused.value.values["actual"]
    assert names(tmp_path / "models") == []


@pytest.mark.parametrize("claimed", [str(len(ARCHIVE) + 1), str(len(ARCHIVE) - 1)])
def test_another_size_than_recorded_is_refused_before_it_is_loaded(tmp_path, known, site, claimed):
    site.behaviour.claimed_length = claimed

    with pytest.raises(SizeWrong) as refused:
        fetch_small(tmp_path, known)

    assert claimed == refused.value.values["actual"]
    assert names(tmp_path / "models") == []


def test_a_server_that_sends_more_than_recorded_is_stopped(tmp_path, known, site):
    site.behaviour = replace(site.behaviour, content=ARCHIVE + bytes(100_000), claimed_length="")

    with pytest.raises(SizeWrong):
        fetch_small(tmp_path, known)

    assert names(tmp_path / "models") == []


def test_a_server_that_tells_no_size_is_fine(tmp_path, site):
    site.behaviour.claimed_length = ""

    path = fetch_small(tmp_path, among(site.url, size_bytes=None))

    assert contents(path) == FILES


def test_redirects_are_followed(tmp_path, known, site):
    site.behaviour.redirects = True

    assert contents(fetch_small(tmp_path, known)) == FILES


@pytest.mark.parametrize("status", [403, 404, 500, 503])
def test_a_refusal_is_told_with_its_status(tmp_path, known, site, status):
    site.behaviour.status = status

    with pytest.raises(ServerRefused) as refused:
        fetch_small(tmp_path, known)

    assert {"name": "small", "url": site.url, "status": str(status)} == refused.value.values


def test_being_offline_is_told_with_the_host(tmp_path):
    with socket.create_server(("127.0.0.1", 0)) as listening:
        port = listening.getsockname()[1]

    with pytest.raises(Offline) as offline:
        fetch_small(tmp_path, among(f"http://127.0.0.1:{port}/model.zip"))

    assert {"name": "small", "host": f"127.0.0.1:{port}"} == offline.value.values


def test_a_name_that_cannot_be_resolved_is_being_offline(tmp_path):
    with pytest.raises(Offline):
        fetch_small(tmp_path, among("http://no-such-host.invalid/model.zip"))


def test_an_address_of_this_machines_files_is_never_read(tmp_path):
    secret = tmp_path / "secret.zip"
    secret.write_bytes(ARCHIVE)

    with pytest.raises(Offline):
        fetch_small(tmp_path, among(secret.as_uri()))

    assert not (tmp_path / "models" / "small").exists()


def test_without_a_recorded_checksum_nothing_is_fetched_unless_accepted(tmp_path, site):
    unknown = among(site.url, sha256=None)

    with pytest.raises(ChecksumUnknown) as refused:
        fetch_small(tmp_path, unknown)

    assert refused.value.values["cure"] == "roundcaller models fetch small --accept-unknown"
    assert site.asked == []


def test_a_model_trusted_on_first_use_says_so_and_is_compared_ever_after(tmp_path, site):
    unknown = among(site.url, sha256=None, size_bytes=None)

    path = fetch_small(tmp_path, unknown, accept_unknown=True)

    assert Against.FIRST_USE is verify("small", tmp_path, unknown)
    assert Against.FIRST_USE is list_models(tmp_path, unknown)[0].against
    for file in path.rglob("*.*"):
        file.unlink()
    site.behaviour.content = zipped({"am/final.mdl": b"something else"})
    with pytest.raises(ChecksumWrong):
        fetch_small(tmp_path, unknown, accept_unknown=True)


def test_a_disk_with_too_little_room_is_told_before_the_download(tmp_path, known, site):
    with pytest.raises(NoRoom) as full:
        fetch_small(tmp_path, known, free_bytes=lambda _: len(ARCHIVE))

    assert {"name": "small", "folder": str(tmp_path / "models"), "needed_mb": "2"} == full.value.values
    assert site.asked == []


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs the device that is always full")
def test_a_disk_that_fills_up_on_the_way_is_told(tmp_path, known):
    part = part_path("small", tmp_path)
    part.parent.mkdir(parents=True)
    part.symlink_to("/dev/full")

    with pytest.raises(NoRoom):
        fetch_small(tmp_path, known)


def test_a_data_folder_that_cannot_be_made_is_told(tmp_path, known):
    (tmp_path / "file").write_text("in the way")

    with pytest.raises(FolderClosed) as closed:
        fetch_small(tmp_path / "file", known)

    assert closed.value.values["folder"] == str(tmp_path / "file" / "models")


def test_a_bad_archive_is_let_go_and_what_was_there_stays(tmp_path, site):
    hostile = zipped({"../../evil": b"x"}, around="")
    site.behaviour.content = hostile
    bystander = tmp_path / "models" / "other"
    bystander.mkdir(parents=True)

    with pytest.raises(ArchiveUnsafe) as refused:
        fetch_small(tmp_path, among(site.url, sha256(hostile), len(hostile)))

    assert refused.value.values["entry"] == "../../evil"
    expected = ["other"]
    assert expected == names(tmp_path / "models")


def test_the_receipt_outlives_the_model(tmp_path, known):
    path = fetch_small(tmp_path, known)
    for file in sorted(path.rglob("*"), reverse=True):
        file.unlink() if file.is_file() else file.rmdir()
    path.rmdir()

    with pytest.raises(ModelMissing):
        verify("small", tmp_path, known)

    assert receipt_path("small", tmp_path).is_file()


def test_a_model_that_comes_with_a_package_needs_no_fetching(tmp_path):
    path = fetch("pocketsphinx-en-us", tmp_path, Lines())

    assert (path / "cmudict-en-us.dict").is_file()
    assert list(tmp_path.iterdir()) == []


def test_a_name_that_is_not_in_the_catalogue_is_told_with_those_that_are(tmp_path, known):
    with pytest.raises(ModelUnknown) as unknown:
        fetch("../small", tmp_path, Lines(), among=known)

    assert unknown.value.values == {"name": "../small", "names": "small"}
