"""Learns the network of src/reading/ranker/network.ts: two attention layers over words, each a sum of its hashed pieces and
concepts. Called by `npm run train:network`; reads JSON as network-input.ts writes it from stdin, writes to stdout a line of
JSON with the chances that the learned network gives to the probes, then the weights: matrices as a float32 scale a row and
a signed byte a number, vectors as float32, little-endian. Needs PyTorch (Debian: python3-torch), on the processor alone:
the same input, PyTorch and processor give the same weights, bit for bit."""
import json
import math
import random
import sys

import numpy as np
import torch
from torch import nn
from torch.nn import functional as F

given = json.load(sys.stdin)
SHAPE = given["shape"]
WIDTH, LAYERS, HEADS, WIDER = SHAPE["width"], SHAPE["layers"], SHAPE["heads"], SHAPE["wider"]
PIECES, MOST_WORDS, MOST_PIECES, MOST_CONCEPTS = SHAPE["pieces"], SHAPE["mostWords"], SHAPE["mostPieces"], SHAPE["mostConcepts"]
ACTS, STATES, ROLES, PHRASES = given["acts"], given["states"], given["roles"], given["phrases"]
EXAMPLES = given["examples"]
MOST_PHRASE = 4

ROUNDS, BATCH, STEP = 25, 64, 2e-3
# So many batches are drawn at once and sorted by length, so that short messages are not filled up to long ones.
POOL = 32
WORD_DROPPED, WORD_MISSPELT, STATE_DROPPED, JOINED = 0.03, 0.12, 0.15, 0.25
PIECES_DROPPED, DROPPED = 0.35, 0.25
# Labels are the work of people: nothing is certain.
TRUE_AT, FALSE_AT = 0.965, 0.005


def piece(text):
    """FNV-1a over UTF-16 units; 0 means no piece."""
    number = 0x811C9DC5
    units = text.encode("utf-16-le")
    for at in range(0, len(units), 2):
        number = ((number ^ (units[at] | units[at + 1] << 8)) * 0x01000193) & 0xFFFFFFFF
    return 1 + number % (PIECES - 1)


known_pieces = {}


def pieces_of(word):
    if word not in known_pieces:
        edged = f"<{word}>"
        groups = [] if word.startswith("#") else [edged[at : at + n] for n in (2, 3, 4, 5) for at in range(len(edged) - n + 1)]
        known_pieces[word] = [piece(text) for text in [f"w{edged}", *groups]][:MOST_PIECES]
    return known_pieces[word]


def rows_of(words):
    """For each word the rows of the table that it is the sum of."""
    rows = [list(pieces_of(word)) for word in words]
    at = 0
    while at < len(words):
        length = min(MOST_PHRASE, len(words) - at)
        while length > 0 and " ".join(words[at : at + length]) not in PHRASES:
            length -= 1
        if length > 0:
            concepts = PHRASES[" ".join(words[at : at + length])][:MOST_CONCEPTS]
            for one in range(at, at + length):
                rows[one] += [PIECES + concept for concept in concepts]
        at += max(1, length)
    return rows


def misspelt(word):
    if len(word) < 4 or word.startswith("#") or random.random() > WORD_MISSPELT:
        return word
    at, kind = random.randrange(len(word) - 1), random.random()
    if kind < 0.3:
        return word[:at] + word[at + 1 :]
    if kind < 0.6:
        return word[:at] + word[at + 1] + word[at] + word[at + 2 :]
    if kind < 0.8:
        return word[:at] + random.choice("aeiosntrl") + word[at + 1 :]
    return word[:at] + word[at] + word[at:]


def disturbed(example):
    words, acts, state = example["words"], set(example["acts"]), example["state"]
    if random.random() < JOINED:
        other = random.choice(EXAMPLES)
        if other["acts"] and 0 < len(acts) < 3:
            words = [*words, random.choice([",", ".", "and", "y"]), *other["words"]]
            acts |= set(other["acts"])
    words = [misspelt(word) for word in words if random.random() > WORD_DROPPED][:MOST_WORDS]
    return {**example, "words": words, "acts": acts, "state": 0 if random.random() < STATE_DROPPED else state}


def tensors(messages):
    rows = [rows_of(message["words"][:MOST_WORDS]) or [[piece("w<>")]] for message in messages]
    longest = max(map(len, rows))
    table = np.zeros((len(rows), longest, MOST_PIECES + MOST_CONCEPTS), np.int64)
    for i, words in enumerate(rows):
        for j, word in enumerate(words):
            word = word[: table.shape[2]]
            table[i, j, : len(word)] = word
    states = torch.tensor([message["state"] for message in messages])
    roles = torch.tensor([message["role"] for message in messages])
    return torch.tensor(table), states, roles


class Layer(nn.Module):
    def __init__(self):
        super().__init__()
        self.before_attention, self.before_wider = nn.LayerNorm(WIDTH), nn.LayerNorm(WIDTH)
        self.asked, self.told = nn.Linear(WIDTH, 3 * WIDTH), nn.Linear(WIDTH, WIDTH)
        self.wider, self.narrower = nn.Linear(WIDTH, WIDER), nn.Linear(WIDER, WIDTH)
        nn.init.xavier_uniform_(self.asked.weight)
        nn.init.zeros_(self.asked.bias)

    def forward(self, seen, mask):
        batch, length, _ = seen.shape
        parts = self.asked(self.before_attention(seen)).view(batch, length, 3, HEADS, WIDTH // HEADS).permute(2, 0, 3, 1, 4)
        queries, keys, values = parts
        looks = queries @ keys.transpose(2, 3) / math.sqrt(WIDTH // HEADS)
        shares = looks.masked_fill(~mask[:, None, None], -1e4).softmax(-1)
        heard = F.dropout(shares, DROPPED, self.training) @ values
        told = self.told(heard.transpose(1, 2).reshape(batch, length, WIDTH))
        seen = seen + F.dropout(told, DROPPED, self.training)
        wider = F.dropout(F.relu(self.wider(self.before_wider(seen))), DROPPED, self.training)
        return seen + F.dropout(self.narrower(wider), DROPPED, self.training)


class Network(nn.Module):
    def __init__(self):
        super().__init__()
        count = len(ACTS)
        self.table = nn.Parameter(torch.randn(PIECES + given["concepts"], WIDTH) * 0.05)
        self.places = nn.Parameter(torch.randn(MOST_WORDS, WIDTH))
        self.states, self.roles = nn.Parameter(torch.randn(len(STATES), WIDTH)), nn.Parameter(torch.randn(len(ROLES), WIDTH))
        self.layers = nn.ModuleList(Layer() for _ in range(LAYERS))
        self.questions = nn.Parameter(torch.randn(count, WIDTH) * 0.1)
        self.keys, self.values = nn.Linear(WIDTH, WIDTH), nn.Linear(WIDTH, WIDTH)
        self.answers, self.whole = nn.Linear(WIDTH, count), nn.Linear(WIDTH, count)

    def forward(self, rows, states, roles):
        batch, length, _ = rows.shape
        sums = F.embedding_bag(rows.view(batch * length, -1), self.table, mode="sum", padding_idx=0).view(batch, length, WIDTH)
        words = sums / (rows > 0).sum(2, keepdim=True).clamp(min=1).sqrt()
        words = F.dropout(words, PIECES_DROPPED, self.training) + self.places[:length]
        seen = torch.cat([(self.states[states] + self.roles[roles])[:, None], words], 1)
        mask = torch.cat([torch.ones(batch, 1, dtype=torch.bool), rows[:, :, 0] > 0], 1)
        for layer in self.layers:
            seen = layer(seen, mask)
        looked = torch.einsum("ad,bld->bal", self.questions, self.keys(seen)) / math.sqrt(WIDTH)
        looked = looked.masked_fill(~mask[:, None], -1e4).softmax(-1)
        found = F.dropout(torch.einsum("bal,bld->bad", looked, self.values(seen)), PIECES_DROPPED, self.training)
        whole = self.whole(F.dropout(seen[:, 0], PIECES_DROPPED, self.training))
        return (found * self.answers.weight).sum(-1) + self.answers.bias + whole


def batches():
    """All rounds' examples, disturbed, in batches of about one length."""
    for _ in range(ROUNDS):
        order = random.sample(EXAMPLES, len(EXAMPLES))
        for start in range(0, len(order), POOL * BATCH):
            pool = sorted((disturbed(one) for one in order[start : start + POOL * BATCH]), key=lambda one: len(one["words"]))
            parts = [pool[at : at + BATCH] for at in range(0, len(pool), BATCH)]
            yield from random.sample(parts, len(parts))


def learned():
    network = Network()
    network.train()
    whole_pools, rest = divmod(len(EXAMPLES), POOL * BATCH)
    steps = ROUNDS * (whole_pools * POOL + math.ceil(rest / BATCH))
    optimizer = torch.optim.AdamW(network.parameters(), STEP, weight_decay=0.02)
    schedule = torch.optim.lr_scheduler.OneCycleLR(optimizer, STEP, total_steps=steps + 1, pct_start=0.1)
    for step, batch in enumerate(batches()):
        wanted = torch.full((len(batch), len(ACTS)), FALSE_AT)
        counts = torch.ones(len(batch), len(ACTS))
        for i, message in enumerate(batch):
            counts[i, [act for act in message["fair"] if act not in message["acts"]]] = 0
            wanted[i, list(message["acts"])] = TRUE_AT
        loss = F.binary_cross_entropy_with_logits(network(*tensors(batch)), wanted, counts) * len(ACTS) / 8
        optimizer.zero_grad()
        loss.backward()
        nn.utils.clip_grad_norm_(network.parameters(), 1.0)
        optimizer.step()
        schedule.step()
        if step % 500 == 0:
            print(f"{step} of {steps} steps, loss {loss.item():.3f}", file=sys.stderr, flush=True)
    network.eval()
    return network


def as_bytes(network):
    """Also rounds the network's own matrices, so that the probes are what the written weights give."""
    out = []
    for name, values in network.named_parameters():
        matrix = values.detach()
        if matrix.dim() < 2:
            out.append(matrix.numpy().astype("<f4").tobytes())
            continue
        scales = matrix.abs().amax(1, keepdim=True).clamp(min=1e-8) / 127
        rounded = (matrix / scales).round()
        out.append(scales.numpy().astype("<f4").tobytes() + rounded.numpy().astype("i1").tobytes())
        values.data = rounded * scales
    return b"".join(out)


torch.use_deterministic_algorithms(True)
torch.set_num_threads(4)
random.seed(1)
torch.manual_seed(1)
network = learned()
weights = as_bytes(network)
with torch.no_grad():
    probes = [torch.sigmoid(network(*tensors([probe]))[0]).tolist() for probe in given["probes"]]
    tried = [torch.sigmoid(network(*tensors(given["tried"][at : at + 256]))) for at in range(0, len(given["tried"]), 256)]
sys.stdout.buffer.write(json.dumps({"probes": probes, "tried": [row for some in tried for row in some.tolist()]}).encode() + b"\n" + weights)
