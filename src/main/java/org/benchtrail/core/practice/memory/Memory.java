package org.benchtrail.core.practice.memory;

import static org.benchtrail.core.practice.memory.MemoryPart.*;

import org.benchtrail.core.practice.Parameters;

/**
 * Two modules in two slots. Errors come by chance (Poisson), at a rate an hour of
 *
 * <pre>
 * slot    (lambda_module + lambda_slot + weak + over max(0, speed - stable)) 2^((T - 40) / 10)
 * seen    1 - e^(-rate hours)                          at least one error in a run of so many hours
 * </pre>
 *
 * @param changedOver whether module A is in slot 2 and B in slot 1
 */
public record Memory(Parameters<MemoryPart> parts, boolean changedOver) {
    private static final double REFERENCE = 40;
    private static final double DOUBLES_BY = 10;

    /** The module in a slot, A or B. */
    public char module(int slot) {
        return (slot == 1) == changedOver ? 'B' : 'A';
    }

    /** Errors an hour in slot 1 or 2. */
    public double rate(int slot) {
        double module = parts.get(module(slot) == 'A' ? MODULE_A : MODULE_B);
        double own = parts.get(slot == 1 ? SLOT_1 : SLOT_2);
        double fast = parts.get(OVER) * Math.max(0, parts.get(SPEED) - parts.get(STABLE));
        return (module + own + parts.get(WEAK) + fast) * Math.pow(2, (parts.get(TEMPERATURE) - REFERENCE) / DOUBLES_BY);
    }

    /** Errors an hour. */
    public double rate() {
        return rate(1) + rate(2);
    }

    /** The chance that a run of so many hours shows an error at all. */
    public double seen(double hours) {
        return -Math.expm1(-rate() * hours);
    }

    public Memory changed() {
        return new Memory(parts, !changedOver);
    }

    public Memory with(Parameters<MemoryPart> after) {
        return new Memory(after, changedOver);
    }
}
