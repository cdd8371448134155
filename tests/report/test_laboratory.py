"""A report that a laboratory signs: ISO/IEC 17025:2017, 7.8.2.1, item by item; issues, equipment, languages and the signature."""

from __future__ import annotations

import asyncio
import re
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pypdf
import pytest

from colure.app.services.particulars import register_of, settings_of
from colure.app.services.reporting import sign_report
from colure.errors import InputError
from colure.model.equipment import Register
from colure.model.loading import load
from colure.report.content import SECTIONS, compose
from colure.report.document import Document
from colure.report.particulars import Particulars, particulars_sections
from colure.report.pdf import render_pdf
from colure.report.texts import LANGUAGES, Texts, catalogue
from tests.printed import pages_of
from tests.report.readability import MOST_WORDS, mean_words, sentences
from tests.report.test_pages import FULL, filled

DECLARED = """
number = "A-17"
issue = 2
changes = "Serial number corrected."
location = "Chamber 2"
received = 2026-03-02
condition = "no damage seen"
authorized_by = "Head of laboratory"
method = "Procedure 4"
sampling = "lot plan 9"
deviations = "Radome removed."
external = "none"
temperature_c = { low = 21.5, high = 22.5 }
humidity_percent = { low = 40, high = 45 }

[laboratory]
name = "Antenna laboratory"
address = "1 Range Road"

[customer]
name = "River office"
contact = "purchasing"
"""
EQUIPMENT = """
[[item]]
kind = "horn"
name = "reference horn"
serial = "H1"
certificate = "C-100"
uncertainty = "0.3 dB (k = 2)"
calibrated = 2024-01-10
due = 2026-01-10

[[item]]
kind = "cable"
name = "long cable"
"""
#: Words that an item of 7.8.2.1 shows in a declared report, and the label of a row that says `not stated` in a bare one.
#: Wording of the list: ISO/IEC 17025:2017, 7.8.2.1 a) to p), as reproduced on a public page (read there, not in the standard itself).
CHECKLIST = {
    "b laboratory": ("Laboratory Antenna laboratory, 1 Range Road", "Laboratory"),
    "c location": ("Chamber 2", "Place of measurement"),
    "d identification": ("Report A-17, issue 2", None),
    "d end": ("End of report A-17, issue 2.", None),
    "e customer": ("Customer River office, purchasing", "Customer"),
    "f method": ("Procedure 4", None),
    "g device": ("Serial number S-5", "Serial number"),
    "g condition": ("no damage seen", "Condition on arrival"),
    "h receipt": ("Received 2026-03-02", "Received"),
    "i performance": ("Measured (UTC) 2026-03-04 to 2026-03-05", "Measured (UTC)"),
    "j issue": ("Issued (UTC) 2026-03-09", None),
    "k sampling": ("lot plan 9", "Sampling plan"),
    "l relates": ("The results relate only to the item tested.", None),
    "n deviations": ("Radome removed.", "Deviations from the method"),
    "o authorizer": ("Authorized by Head of laboratory", "Authorized by"),
    "p external": ("Results from others none", "Results from others"),
    "order": ("Order 4711", "Order"),
    "operator": ("Operator anna", "Operator"),
    "temperature": ("21.5 \u2013 22.5", "Temperature"),
    "humidity": ("40 \u2013 45 %", "Relative humidity"),
    "amendment": ("This issue replaces issue 1 Serial number corrected.", None),
}


def stated(folder, *, identity, measured):
    return Particulars(
        settings=settings_of(folder), run="first", record_sha256="0123456789abcdef", identity=identity, device="Panel",
        measured=measured, issued=date(2026, 3, 9), method=("method_transform", "method_gain"), register=register_of(folder),
    )  # fmt: skip


def text_of(one, target, **more):
    document = one.framed(Document("Panel", "", (), particulars_sections(one, **more)))
    render_pdf(document, target)
    pages = pages_of(target)
    return " ".join(" ".join(pages).split()), len(pages)


def test_every_item_of_the_list_stands_in_a_declared_report_and_is_not_stated_in_a_bare_one(tmp_path):
    bare, _ = text_of(stated(tmp_path, identity={}, measured=None), tmp_path / "bare.pdf")
    (tmp_path / "report.toml").write_text(DECLARED, encoding="utf-8")
    (tmp_path / "equipment.toml").write_text(EQUIPMENT, encoding="utf-8")
    said = {"operator": "anna", "serial": "S-5", "order": "4711"}
    full, pages = text_of(
        stated(tmp_path, identity=said, measured=(date(2026, 3, 4), date(2026, 3, 5))), tmp_path / "full.pdf"
    )
    for item, (words, label) in CHECKLIST.items():
        assert words in full, item
        if label is not None:
            assert f"{label} not stated" in bare, item
            assert f"{label} not stated" not in full, item
    assert "page 1 of" in bare and f"page {pages} of {pages}" in full
    # Equipment with the identity and due date of its calibration; what was overdue at the measurement says so.
    assert "C-100" in full and re.search(r"2026-01-10\s+OVERDUE", full)
    assert "equipment.toml" in bare
    assert "first-0123456789ab, issue 1" in bare


def test_the_decision_rule_states_its_risk(tmp_path):
    """Guard band of the expanded uncertainty: at most 2.5 % (ILAC-G8:09/2019, table 1, from memory; a normal tail: JCGM 106:2012)."""
    from scipy.stats import norm

    from colure.report.particulars import Decision

    one = stated(tmp_path, identity={}, measured=None)
    words = [block.text for block in particulars_sections(one, decision=Decision("guard-band", "Limits"))[-1].blocks]
    assert any("at most 2.5 %" in text and "Limits" in text for text in words)
    # At k = 2 a value that lies U inside its limit is beyond it with this probability.
    assert 100.0 * norm.sf(2.0) == pytest.approx(2.275, abs=5e-4)
    assert 100.0 * norm.sf(2.0) <= 2.5
    plain = [block.text for block in particulars_sections(one)[-1].blocks]
    assert "No statement of conformity is made: no specification was given." in plain


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("issue = 2", "needs changes"),
        ('changes = "x"', "issue 1 changes nothing"),
        ("temperature_c = { low = 25, high = 20 }", "high must not be below low"),
        ("planes = []", "must name E, H or both"),
    ],
)
def test_settings_that_contradict_themselves_are_refused(tmp_path, text, words):
    (tmp_path / "report.toml").write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=re.escape(words)):
        settings_of(tmp_path)


def test_equipment_warns_after_its_due_date_and_not_on_it(tmp_path):
    (tmp_path / "equipment.toml").write_text(EQUIPMENT, encoding="utf-8")
    found = load(Register, tmp_path / "equipment.toml")
    on_the_day, after = found.warnings(date(2026, 1, 10)), found.warnings(date(2026, 1, 12))
    assert len(on_the_day) == 1 and "long cable" in on_the_day[0] and "unknown" in on_the_day[0]
    assert len(after) == 2 and "horn reference horn (H1)" in after[0] and "2 days before 2026-01-12" in after[0]


def test_a_certificate_file_that_is_not_there_is_refused(tmp_path):
    (tmp_path / "equipment.toml").write_text(
        '[[item]]\nkind = "horn"\nname = "h"\ncertificate_file = "c.pdf"\n', "utf-8"
    )
    with pytest.raises(InputError, match=r"c\.pdf.*no such file"):
        register_of(tmp_path)


def test_every_text_exists_in_every_language_with_the_same_values():
    for key, texts in catalogue().items():
        assert set(texts) == set(LANGUAGES), key
        fields = [sorted(re.findall(r"\{(\w+)\}", texts[name])) for name in LANGUAGES]
        assert all(one == fields[0] for one in fields), key
        # English has a decimal point, the others a comma.
        plain = [re.sub(r"(?<=\d),(?=\d)", ".", texts[name]) for name in LANGUAGES]
        units = [re.findall(r"\d+(?:\.\d+)? %|/ d\w+|GHz|ILAC-[\w:/]+", one) for one in plain]
        assert all(sorted(one) == sorted(units[0]) for one in units), key


#: Words that a language has to itself among the four; none may stand in a report in another one.
OWN_WORDS = {
    "en": ("the", "of", "peak", "plane", "report", "stated", "beamwidth", "expanded"),
    "de": ("der", "nicht", "bericht", "ebene", "prüfling", "halbwertsbreite"),
    "fr": ("le", "du", "rapport", "mesure", "faisceau", "précisé"),
    "es": ("el", "del", "informe", "medición", "haz", "indicado"),
}


def key_and_certificate(folder):
    """A key of our own with its certificate, as PKCS #12."""
    from cryptography import x509
    from cryptography.hazmat.primitives import hashes, serialization
    from cryptography.hazmat.primitives.asymmetric import ec

    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(x509.NameOID.COMMON_NAME, "Test laboratory")])
    now = datetime.now(UTC)
    usage = x509.KeyUsage(digital_signature=True, content_commitment=True, key_encipherment=False, data_encipherment=False,
                          key_agreement=False, key_cert_sign=True, crl_sign=False, encipher_only=False, decipher_only=False)  # fmt: skip
    certificate = (
        x509.CertificateBuilder().subject_name(name).issuer_name(name).public_key(key.public_key())
        .serial_number(x509.random_serial_number()).not_valid_before(now - timedelta(days=1)).not_valid_after(now + timedelta(days=9))
        .add_extension(usage, critical=True).add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .sign(key, hashes.SHA256())
    )  # fmt: skip
    target = folder / "laboratory.p12"
    target.write_bytes(
        serialization.pkcs12.serialize_key_and_certificates(
            b"lab", key, certificate, None, serialization.BestAvailableEncryption(b"open sesame")
        )
    )
    return target, certificate


def apart(work, *values):
    """Return what work in a thread of its own returns: no other event loop runs there."""
    with ThreadPoolExecutor(1) as own:
        return own.submit(work, *values).result()


def test_a_signed_report_is_whole_and_trusted_and_one_changed_byte_shows(tmp_path):
    """Validated by pyHanko, which shares nothing with the signing but the standard and its own parser."""
    from asn1crypto.x509 import Certificate
    from cryptography.hazmat.primitives.serialization import Encoding
    from pyhanko.pdf_utils.reader import PdfFileReader
    from pyhanko.sign.validation import validate_pdf_signature
    from pyhanko_certvalidator import ValidationContext

    from colure.app.storage.folders import RunFolder

    key, certificate = key_and_certificate(tmp_path)
    printed = tmp_path / "report.pdf"
    render_pdf(Document("Panel", "", ("It passes.",)), printed)
    with pytest.raises(InputError, match="passphrase does not open it"):
        sign_report(RunFolder(tmp_path), printed, 1, key_file=key, passphrase=b"wrong")

    async def in_a_notebook():
        """An event loop runs in the thread of a notebook's cells."""
        return sign_report(RunFolder(tmp_path), printed, 1, key_file=key, passphrase=b"open sesame")

    signed = apart(asyncio.run, in_a_notebook())
    trusted = ValidationContext(trust_roots=[Certificate.load(certificate.public_bytes(Encoding.DER))])
    with signed.open("rb") as opened:
        status = apart(validate_pdf_signature, PdfFileReader(opened).embedded_signatures[0], trusted)
    assert status.bottom_line and status.intact and status.valid and status.trusted
    data = bytearray(signed.read_bytes())
    data[200] ^= 1
    (tmp_path / "changed.pdf").write_bytes(bytes(data))
    with (tmp_path / "changed.pdf").open("rb") as opened:
        status = apart(validate_pdf_signature, PdfFileReader(opened, strict=False).embedded_signatures[0], trusted)
    assert not status.intact and not status.bottom_line
    with pytest.raises(InputError, match="issue 1 is signed already; set issue = 2"):
        sign_report(RunFolder(tmp_path), printed, 1, key_file=key, passphrase=b"open sesame")


@pytest.mark.nightly
def test_no_page_of_a_whole_report_is_less_than_two_thirds_full(whole, tmp_path):
    shares = filled(whole, tmp_path)
    assert len(shares) >= 8
    assert min(shares[:-1]) >= FULL, shares


def formed(source, **settings):
    told = source.particulars.settings.model_copy(update=settings)
    say = Texts.of(told.language)
    return replace(source, particulars=replace(source.particulars, settings=told, say=say))


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_short_report_has_two_pages_in_one_language(source, tmp_path, language):
    target = tmp_path / "short.pdf"
    # The device's name is the customer's own, in whatever language.
    named = replace(source, device=source.device.model_copy(update={"name": "X-1"}))
    named = replace(named, particulars=replace(named.particulars, device="X-1"))
    render_pdf(compose(formed(named, form="short", language=language)), target)
    reader = pypdf.PdfReader(target)
    assert len(reader.pages) == 2
    text = " ".join(" ".join(pages_of(target)).split()).lower()
    words = set(re.findall(r"[\w:]+", text))
    assert sum(word in words for word in OWN_WORDS[language]) >= 4
    for other in LANGUAGES:
        if other != language:
            mixed = [word for word in OWN_WORDS[other] if word in words and word not in OWN_WORDS[language]]
            assert mixed == [], (language, mixed)
    assert "dbi" in text and "deg" in text and "ghz" in text


def test_sections_stand_in_the_order_that_is_asked_for(source):
    document = compose(formed(source, sections=("figures", "particulars"), figures=("gain_dbi",)))
    assert [one.title for one in document.sections] == ["Figures", "Particulars", "Equipment", "Statements"]
    assert len(document.sections[0].blocks[0].rows) == 1
    with pytest.raises(ValueError, match="must be one of particulars"):
        compose(formed(source, sections=("weather",)))


def test_no_source_in_a_report_is_from_memory_and_every_section_is_described(whole):
    document = whole
    words = [repr(section) for section in document.sections]
    assert not any("from memory" in text for text in words)
    assert all(section.title and section.blocks for section in document.sections)
    assert len(SECTIONS) >= 16


def test_sentences_of_the_report_and_of_the_findings_are_short(source, whole):
    from colure.report.document import Chart, Paragraph, Side, Table

    def texts(block):
        if isinstance(block, Paragraph):
            return [block.text]
        if isinstance(block, Side):
            return [one.caption for one in block.charts]
        if isinstance(block, Chart):
            return [block.caption]
        return (
            [str(cell) for row in block.rows for cell in row if str(cell).endswith(".")]
            if isinstance(block, Table)
            else []
        )

    document = whole
    every = [
        *document.answer,
        *(text for section in document.sections for block in section.blocks for text in texts(block)),
    ]
    found = [one for text in every for one in sentences(text)]
    assert len(found) > 60
    assert mean_words(found) <= MOST_WORDS
    findings = [one for finding in source.findings for one in sentences(f"{finding.text}.")]
    assert findings and mean_words(findings) <= MOST_WORDS
