"""The web server and the mail server to which a test's daemon tells its announcements.

receivers.py FOLDER PORT PORT: FOLDER holds server.pem and server.key, and `secret`, by which the
web server checks signatures as the Standard Webhooks have it, with Python's own hmac. The ports are
those of mail, with TLS from the beginning and with STARTTLS. Writes into FOLDER: `ports`, that of
the web server, once all are up; and `received`, one line of JSON for each arrival. What stands in
FOLDER/web or FOLDER/mail, if anything, is the status with which the next ones are turned away.
"""
import base64
import email
import email.policy
import hashlib
import hmac
import http.server
import json
import pathlib
import ssl
import sys
import threading

from aiosmtpd.controller import Controller
from aiosmtpd.smtp import AuthResult, LoginPassword

FOLDER = pathlib.Path(sys.argv[1])
LOCK = threading.Lock()


def received(**what):
    with LOCK, open(FOLDER / "received", "a", encoding="utf-8") as out:
        out.write(json.dumps(what) + "\n")


def turned_away(kind):
    try:
        return (FOLDER / kind).read_text(encoding="ascii").strip()
    except FileNotFoundError:
        return ""


def is_signed(head, body):
    key = base64.b64decode((FOLDER / "secret").read_text(encoding="ascii").strip()[len("whsec_"):])
    content = f"{head['webhook-id']}.{head['webhook-timestamp']}.".encode() + body
    right = base64.b64encode(hmac.digest(key, content, hashlib.sha256)).decode()
    return hmac.compare_digest(f"v1,{right}", head.get("webhook-signature", ""))


class Web(http.server.BaseHTTPRequestHandler):
    def do_POST(self):
        body = self.rfile.read(int(self.headers["content-length"]))
        away = turned_away("web")
        received(way="webhook", id=self.headers["webhook-id"], signed=is_signed(self.headers, body),
                 type=self.headers["content-type"], turned_away=away, body=json.loads(body))
        self.send_response(int(away or 204))
        self.send_header("content-length", "0")
        self.end_headers()

    def log_message(self, *words):
        pass


class Mail:
    def __init__(self, secured):
        self.secured = secured  # whoever speaks here has shaken hands already

    async def handle_DATA(self, server, session, envelope):
        away = turned_away("mail")
        letter = email.message_from_bytes(envelope.content, policy=email.policy.default)
        text = letter.get_body(("plain",)).get_content()
        received(way="mail", id=letter["message-id"].strip("<>").split("@")[0],
                 encrypted=self.secured or session.ssl is not None,
                 by=session.auth_data, turned_away=away,
                 sender=envelope.mail_from, to=envelope.rcpt_tos, text=text, head=dict(letter))
        return f"{away} not now" if away else "250 taken"


def known(server, session, envelope, mechanism, data):
    good = isinstance(data, LoginPassword) and (data.login, data.password) == (b"room", b"pass")
    return AuthResult(success=good, auth_data=data.login.decode() if good else None)


class Submission(Controller):
    """With STARTTLS, and not a word before it."""

    def factory(self):
        from aiosmtpd.smtp import SMTP
        return SMTP(self.handler, tls_context=CONTEXT, require_starttls=True, auth_required=True,
                    authenticator=known)


class Secured(Controller):
    def factory(self):
        from aiosmtpd.smtp import SMTP
        return SMTP(self.handler, auth_required=True, auth_require_tls=False, authenticator=known)


CONTEXT = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
CONTEXT.load_cert_chain(FOLDER / "server.pem", FOLDER / "server.key")


def main():
    web = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Web)
    web.socket = CONTEXT.wrap_socket(web.socket, server_side=True, do_handshake_on_connect=False)
    ports = [int(word) for word in sys.argv[2:4]]
    Secured(Mail(True), hostname="127.0.0.1", port=ports[0], ssl_context=CONTEXT).start()
    Submission(Mail(False), hostname="127.0.0.1", port=ports[1]).start()
    (FOLDER / "ports.new").write_text(f"{web.server_port}\n", encoding="ascii")
    (FOLDER / "ports.new").rename(FOLDER / "ports")
    web.serve_forever()


main()
