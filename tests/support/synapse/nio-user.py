"""A person with an app on matrix-nio and libolm: another implementation of the encryption than the bot's.

Arguments: homeserver, user, password, folder of the keys. Reads commands from standard input, one JSON object a line:
{"do": "join" | "meet" | "say" | "react", "room": ..., "text": ..., "to": ...}; prints what it hears and what its commands gave.
"""

import asyncio
import hashlib
import json
import os
import sys

from nio import AsyncClient, AsyncClientConfig, InviteMemberEvent, MegolmEvent, RoomEncryptedMedia, RoomMessage
from nio.crypto import decrypt_attachment

# nio leaves out what a sync has no room for, and the homeserver gives ten events of a room where no number is named.
ALL_EVENTS = {"room": {"timeline": {"limit": 1000}}}


def tell(**what):
    print(json.dumps(what), flush=True)


def end_with(task):
    """An app that no longer syncs would wait for ever: it ends, with the reason."""
    if not task.cancelled():
        print(task.exception(), file=sys.stderr, flush=True)
        os._exit(1)


def knows(client, name, other):
    room = client.rooms.get(name)
    # Whoever is invited only is among the users too.
    if room is None or other not in room.users or other in room.invited_users:
        return False
    return not room.encrypted or any(client.device_store.active_user_devices(other))


async def main(homeserver, user, password, folder):
    config = AsyncClientConfig(
        encryption_enabled=True, store_sync_tokens=True, max_timeout_retry_wait_time=1
    )
    client = AsyncClient(homeserver, user, store_path=folder, config=config)
    answer = await client.login(password)
    tell(ready=client.device_id or str(answer))

    async def on_message(room, event):
        body = event.source["content"].get("body")
        tell(heard=event.event_id, sender=event.sender, room=room.room_id, text=body, encrypted=event.decrypted)

    async def on_unreadable(room, event):
        tell(unreadable=event.event_id, sender=event.sender)

    async def on_invite(room, event):
        if event.state_key == user and event.membership == "invite":
            await client.join(room.room_id)
            tell(joined=room.room_id)

    async def on_file(room, event):
        answer = await client.download(event.url)
        opened = decrypt_attachment(answer.body, event.key["k"], event.hashes["sha256"], event.iv)
        tell(opened=hashlib.sha256(opened).hexdigest(), text=event.body, stored=len(answer.body))

    client.add_event_callback(on_file, RoomEncryptedMedia)
    client.add_event_callback(on_message, RoomMessage)
    client.add_event_callback(on_unreadable, MegolmEvent)
    client.add_event_callback(on_invite, InviteMemberEvent)
    syncing = asyncio.create_task(client.sync_forever(timeout=10000, full_state=True, sync_filter=ALL_EVENTS))
    syncing.add_done_callback(end_with)
    await client.synced.wait()
    tell(synced=True)

    lines = asyncio.StreamReader()
    await asyncio.get_running_loop().connect_read_pipe(lambda: asyncio.StreamReaderProtocol(lines), sys.stdin)
    while line := await lines.readline():
        command = json.loads(line)
        room = command["room"]
        if command["do"] == "join":
            await client.join(room)
            tell(joined=room)
        elif command["do"] == "meet":
            # Until it has heard of somebody's device, the app encrypts for the others alone.
            other = command["to"]
            while not knows(client, room, other):
                await asyncio.sleep(0.02)
            tell(met=other, room=room)
        else:
            if command["do"] == "say":
                kind, content = "m.room.message", {"msgtype": "m.text", "body": command["text"]}
            else:
                relation = {"rel_type": "m.annotation", "event_id": command["to"], "key": command["text"]}
                kind, content = "m.reaction", {"m.relates_to": relation}
            sent = await client.room_send(room, kind, content, ignore_unverified_devices=True)
            tell(sent=getattr(sent, "event_id", None), why=str(sent))


asyncio.run(main(*sys.argv[1:]))
