"""Sessions, launch codes, the motion lease and rate limits of the control room."""

from __future__ import annotations

import hashlib
import secrets
import time
from collections.abc import Callable
from dataclasses import dataclass, field

from colure.app.web.guard.roles import SessionRole

SECRET_BYTES = 32
#: A launch code is good once, and for this long.
CODE_LIFE_S = 3600.0
SESSION_LIFE_S = 12 * 3600.0
MOST_SESSIONS = 64
#: Whoever holds the motion lease renews it within this time, or loses it.
LEASE_S = 30.0
#: Requests a second that a session may send on average, and at once.
RATE, BURST = 40.0, 80.0
#: Wrong secrets that are answered a minute, of all callers together; more are turned away unread.
WRONG_PER_MINUTE = 20.0


def _digest(secret: str) -> str:
    return hashlib.sha256(secret.encode("utf-8", "surrogatepass")).hexdigest()


@dataclass(kw_only=True)
class Bucket:
    """Lets `burst` requests through at once and `rate` a second on average."""

    rate: float
    burst: float
    left: float = field(default=-1.0)
    at: float = 0.0

    def take(self, now: float) -> bool:
        """Tell whether one more is allowed now."""
        if self.left < 0.0:
            self.left, self.at = self.burst, now
        self.left = min(self.burst, self.left + (now - self.at) * self.rate)
        self.at = now
        if self.left < 1.0:
            return False
        self.left -= 1.0
        return True


@dataclass
class Session:
    """One browser that came in with a launch code.

    token
        What every change must carry in a header besides the cookie: a foreign page cannot read it.
    """

    key: str
    role: SessionRole
    token: str
    until: float
    bucket: Bucket = field(default_factory=lambda: Bucket(rate=RATE, burst=BURST))

    @property
    def name(self) -> str:
        """A short name that gives nothing away."""
        return f"{self.role.word}-{self.key[:6]}"


class Sessions:
    """Secrets are kept as digests: a look-up tells nothing by how long it takes."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._codes: dict[str, tuple[SessionRole, float]] = {}
        self._sessions: dict[str, Session] = {}
        self._wrong = Bucket(rate=WRONG_PER_MINUTE / 60.0, burst=WRONG_PER_MINUTE)

    def invite(self, role: SessionRole) -> str:
        """Return a launch code for a role; it opens one session."""
        code = secrets.token_urlsafe(SECRET_BYTES)
        now = self._clock()
        self._codes = {k: v for k, v in self._codes.items() if v[1] > now}
        self._codes[_digest(code)] = (role, now + CODE_LIFE_S)
        return code

    def redeem(self, code: str) -> tuple[Session, str] | None:
        """Return a new session and its cookie for a code that is good; the code is spent."""
        role, until = self._codes.pop(_digest(code), (SessionRole.NOBODY, 0.0))
        now = self._clock()
        if role is SessionRole.NOBODY or until <= now:
            return None
        self._forget_old(now)
        cookie = secrets.token_urlsafe(SECRET_BYTES)
        key = _digest(cookie)
        session = Session(key, role, secrets.token_urlsafe(SECRET_BYTES), now + SESSION_LIFE_S)
        self._sessions[key] = session
        return session, cookie

    def find(self, cookie: str) -> Session | None:
        """Return the session of a cookie, if it is still good."""
        session = self._sessions.get(_digest(cookie))
        return session if session is not None and session.until > self._clock() else None

    def may_fail(self) -> bool:
        """Count one wrong secret; False once there were too many lately."""
        return self._wrong.take(self._clock())

    def within_rate(self, session: Session) -> bool:
        """Count one request of a session; False if it sends too many."""
        return session.bucket.take(self._clock())

    def token_fits(self, session: Session, token: str) -> bool:
        """Compare a session's token in constant time."""
        return secrets.compare_digest(session.token.encode(), token.encode("utf-8", "surrogatepass"))

    def _forget_old(self, now: float) -> None:
        alive = [s for s in self._sessions.values() if s.until > now]
        newest = sorted(alive, key=lambda s: s.until)[-(MOST_SESSIONS - 1) :]
        self._sessions = {s.key: s for s in newest}


class Lease:
    """Who may move the axes: one session at a time, as long as it keeps saying so."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._holder: Session | None = None
        self._until = 0.0

    @property
    def holder(self) -> Session | None:
        """The session that holds it now."""
        return self._holder if self._clock() < self._until else None

    def take(self, session: Session) -> bool:
        """Take or renew the lease; False if another session holds it."""
        if self.holder not in (None, session):
            return False
        self._holder, self._until = session, self._clock() + LEASE_S
        return True

    def give(self, session: Session) -> None:
        """Give the lease back, if this session holds it."""
        if self.holder is session:
            self._holder = None
