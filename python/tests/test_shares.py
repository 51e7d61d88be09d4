"""Shares of many people on a local cluster of two workers: together they are the whole."""

import os

import numpy as np
from dask.distributed import Client, LocalCluster

import torquill

PEOPLE = {"people": 12, "sex": "woman", "training": "novice", "seed": 5}


def share(part):
    """The people of a part, and the process that reckoned them."""
    answer = torquill.max("biceps-curl", part=part, **PEOPLE)
    return os.getpid(), answer["lifters"]


def test_shares_of_two_workers_are_the_whole():
    whole = torquill.max("biceps-curl", **PEOPLE)["lifters"]
    with (
        LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None) as cluster,
        Client(cluster) as client,
    ):
        client.wait_for_workers(2)
        workers = list(client.scheduler_info(n_workers=-1)["workers"])
        # Every second part on each worker, so that both have a part in it.
        parts = [
            client.submit(share, f"{number}/5", workers=[workers[number % 2]], pure=False)
            for number in range(1, 6)
        ]
        shares = client.gather(parts)
    assert len({process for process, _ in shares} - {os.getpid()}) == 2
    for name, column in whole.items():
        together = np.concatenate([lifters[name] for _, lifters in shares])
        assert np.array_equal(together, column), name
    assert list(whole["number"]) == list(range(12))
