"""A report's PDF signed by the open standard of PDF signatures (ISO 32000-2, 12.8; ETSI EN 319 142-1, PAdES)."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from colure.errors import InputError
from colure.model.loading import require_library

#: Name of the signature's field in the file.
FIELD = "Signature"


def sign_pdf(source: Path, target: Path, *, key_file: Path, passphrase: bytes, reason: str) -> None:
    """Write a signed copy of a PDF; the copy keeps every byte of the source and adds the signature behind it.

    Parameters
    ----------
    key_file
        Private key and certificate as PKCS #12 (RFC 7292), mostly `.p12` or `.pfx`.
    reason
        Why it is signed; the signature carries it.

    Raises
    ------
    InputError
        If pyHanko is not installed, or the key cannot be read with this passphrase.
    """
    require_library("pyhanko", "sign")
    from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
    from pyhanko.sign import fields, signers

    try:
        key = key_file.read_bytes()
    except OSError as error:
        raise InputError([f"sign = {key_file}: cannot be read: {error.strerror}"]) from None
    try:
        signer = signers.SimpleSigner.load_pkcs12_data(key, other_certs=[], passphrase=passphrase or None)
    except ValueError:
        raise InputError([f"sign = {key_file}: no PKCS #12 file, or the passphrase does not open it"]) from None
    described = signers.PdfSignatureMetadata(field_name=FIELD, reason=reason, subfilter=fields.SigSeedSubFilter.PADES)
    # A notebook's own event loop runs in its thread already, and the signing wants one: it gets a thread to itself.
    with source.open("rb") as opened, target.open("xb") as out, ThreadPoolExecutor(1) as own:
        own.submit(signers.sign_pdf, IncrementalPdfFileWriter(opened), described, signer=signer, output=out).result()
