"""Carries bytes between a TCP port and a new pseudo-terminal, whose name it prints."""
import os
import select
import socket
import sys
import tty

master, slave = os.openpty()
tty.setraw(slave)
print(os.ttyname(slave), flush=True)
far = socket.create_connection(("127.0.0.1", int(sys.argv[1])))
while True:
    ready, _, _ = select.select([master, far], [], [])
    if far in ready:
        data = far.recv(4096)
        if not data:
            break
        os.write(master, data)
    if master in ready:
        far.sendall(os.read(master, 4096))
