package org.benchtrail.core.integrity;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A tree in memory as the server keeps one: hashes of leaves, and one hash for every full tile. */
public final class GrownTree implements TreeReader.Tiles {
    private final Map<Integer, List<Hash>> levels = new HashMap<>();
    private final Frontier frontier =
            new Frontier(0, List.of(), (level, n, hash) -> level(level).add((int) n, hash));

    private List<Hash> level(int level) {
        return levels.computeIfAbsent(level, l -> new ArrayList<>());
    }

    public GrownTree add(byte[] leaf) {
        Hash hash = Hash.ofLeaf(leaf);
        level(0).add(hash);
        frontier.add(hash);
        return this;
    }

    public Hash root() {
        return frontier.root();
    }

    public TreeReader at(long size) {
        return new TreeReader(size, this);
    }

    @Override
    public byte[] read(TilePath path) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int from = (int) path.n() * TilePath.FULL;
        level(path.level()).subList(from, from + path.width()).forEach(hash -> out.writeBytes(hash.bytes()));
        return out.toByteArray();
    }
}
