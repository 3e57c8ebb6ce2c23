#!/usr/bin/env node
/// <reference types="node" />
import { cli } from './cli.ts';
import { nodeIo } from './node-io.ts';

process.exitCode = await cli(process.argv.slice(2), nodeIo());
