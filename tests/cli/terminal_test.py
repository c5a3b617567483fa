#!/usr/bin/env python3
"""Colour goes to a terminal that knows it, and to no other: not to TERM=dumb, not without TERM, not where NO_COLOR is set.

usage: terminal_test.py PROGRAM SITE
"""
import os
import pty
import sys

PROGRAM, SITE = sys.argv[1:]


def output(environment):
    """What a check prints to a pseudo-terminal."""
    child, terminal = pty.fork()
    if child == 0:
        os.execve(PROGRAM, [PROGRAM, "check", SITE], environment)
    text = b""
    while True:
        try:
            part = os.read(terminal, 65536)
        except OSError:  # Linux tells the end of a pseudo-terminal as an input error
            break
        if not part:
            break
        text += part
    os.waitpid(child, 0)
    return text


def coloured(**environment):
    text = output(environment)
    assert b"lamp" in text, text
    return b"\x1b" in text


assert coloured(TERM="xterm-256color")
assert not coloured(TERM="dumb")
assert not coloured()
assert not coloured(TERM="xterm-256color", NO_COLOR="1")
assert coloured(TERM="xterm-256color", NO_COLOR="")
print("coloured where it is wanted")
