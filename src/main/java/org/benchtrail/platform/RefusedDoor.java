package org.benchtrail.platform;

/**
 * Somebody who is known was refused for want of a right.
 *
 * @param door method and address, without what was asked there
 */
public record RefusedDoor(String account, String door) {}
